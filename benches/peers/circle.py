"""The share of shots inside a circle off the mean point of impact, by scipy's non-central
chi-squared distribution: python circle.py OUT.json"""

import json
import pathlib
import sys

import scipy
from scipy.stats import chi2, ncx2

rows = []
for radius in (0.05, 0.3, 1, 2, 2.45, 5, 10, 24, 30, 60):
    for offset in (0, 0.01, 0.5, 1, 2, 4, 9, 20, 26, 33, 61):
        share = chi2.cdf(radius**2, 2) if offset == 0 else ncx2.cdf(radius**2, 2, offset**2)
        rows.append([radius, offset, float(share)])
made = dict(made_by="benches/peers/circle.py", scipy=scipy.__version__)
pathlib.Path(sys.argv[1]).write_text(json.dumps(dict(made=made, rows=rows)) + "\n")
