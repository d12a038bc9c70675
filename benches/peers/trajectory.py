"""Trajectories by an adaptive integration with scipy.

    python trajectory.py data OUT.json     the reference integrations of the tests
    python trajectory.py bench             one JSON line: seconds a trajectory to 1000 m,
                                           and how far off, for several tolerances

The drag tables are read from src/flight/tables.rs, so that both sides fly the same curve.
"""

import json
import pathlib
import re
import sys
import time

import numpy as np
import scipy
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

ROOT = pathlib.Path(__file__).resolve().parents[2]
KG_M2 = 0.45359237 / 0.0254**2
G0 = 9.80665


def tables():
    text = (ROOT / "src/flight/tables.rs").read_text()
    found = {}
    for name, body in re.findall(r"\bconst (G\d): \[.*?\] = \[(.*?)\];", text, re.S):
        rows = re.findall(r"\(\s*([\d.]+),\s*([\d.]+)\s*\)", body)
        found[name] = tuple(np.array(column, float) for column in zip(*rows))
    return found


TABLES = tables()


def motion(case):
    mach, cd = TABLES[case["drag"]]
    kappa = case["density_kg_m3"] * np.pi / (8 * case["bc_lb_in2"] * KG_M2)
    sound = case["speed_of_sound_m_s"]
    slope = np.radians(case["slope_deg"])
    gravity = np.array([-G0 * np.sin(slope), -G0 * np.cos(slope), 0.0])
    behind = case["wind_from_behind_m_s"]
    wind = np.array(
        [behind * np.cos(slope), -behind * np.sin(slope), case["wind_from_left_m_s"]]
    )

    def rates(t, s):
        relative = s[3:] - wind
        w = np.sqrt(relative @ relative)
        q = kappa * w * np.interp(w / sound, mach, cd)
        return np.concatenate((s[3:], gravity - q * relative))

    return rates


def start(case):
    angle = 1e-3 * case["elevation_mrad"]
    return np.array([0, 0, 0, case["v0"] * np.cos(angle), case["v0"] * np.sin(angle), 0.0])


def flown(case, to, rtol, atol, max_step, dense):
    there = lambda t, s: s[0] - to
    there.terminal = True
    return solve_ivp(
        motion(case), (0, 60), start(case), method="DOP853", rtol=rtol, atol=atol,
        max_step=max_step, events=there, dense_output=dense,
    )


STANDARD = dict(
    density_kg_m3=1.225, speed_of_sound_m_s=340.294, wind_from_left_m_s=0.0,
    wind_from_behind_m_s=0.0, slope_deg=0.0,
)


def cases():
    loads = [
        ("308", "G1", 0.43, 823.0), ("65", "G7", 0.285, 823.0), ("22", "G1", 0.13, 330.0),
        ("222", "G1", 0.20, 957.0), ("air", "G1", 0.025, 242.0), ("338", "G1", 0.63, 900.0),
        ("slug", "G1", 0.10, 470.0),
    ]
    settings = [
        ("still", {}),
        ("cross", dict(wind_from_left_m_s=8.0)),
        ("head", dict(wind_from_behind_m_s=-12.0, wind_from_left_m_s=5.0)),
        ("tail", dict(wind_from_behind_m_s=12.0)),
        ("up", dict(slope_deg=35.0)),
        ("down", dict(slope_deg=-45.0, wind_from_left_m_s=-3.0)),
        ("slope wind", dict(slope_deg=-30.0, wind_from_behind_m_s=-9.0, wind_from_left_m_s=6.0)),
        ("hill", dict(density_kg_m3=0.90925, speed_of_sound_m_s=328.578, slope_deg=15.0)),
    ]
    for name, drag, bc, v0 in loads:
        far = {"air": 100.0, "22": 300.0, "slug": 300.0}.get(name, 1000.0)
        for setting, more in settings:
            case = dict(
                name=f"{name} {setting}", drag=drag, bc_lb_in2=bc, v0=v0, elevation_mrad=3.0,
                **{**STANDARD, **more},
            )
            yield case, (0.25 * far, far)


def data(out):
    done = []
    for case, ranges in cases():
        # Steps of 2 ms at most: the curve has a kink at every row of its table.
        run = flown(case, ranges[-1] + 1.0, 1e-12, 1e-12, 2e-3, True)
        rows = []
        for x in ranges:
            t = brentq(lambda t: run.sol(t)[0] - x, 0, run.t[-1], xtol=1e-14)
            s = run.sol(t)
            rows.append(dict(x=x, y=s[1], z=s[2], v=float(np.linalg.norm(s[3:])), t=t))
        done.append(dict(**case, rows=rows))
    made = dict(made_by="benches/peers/trajectory.py", scipy=scipy.__version__, numpy=np.__version__)
    pathlib.Path(out).write_text(json.dumps(dict(made=made, cases=done), indent=1) + "\n")


def bench():
    case = dict(drag="G1", bc_lb_in2=0.43, v0=823.0, elevation_mrad=1.2181887, **STANDARD)
    height = lambda run: float(run.y_events[0][0][1])
    exact = height(flown(case, 1000.0, 1e-12, 1e-12, 2e-3, False))
    rows = []
    for tolerance in (1e-5, 1e-6, 1e-7, 1e-8, 1e-9):
        times = []
        for _ in range(25):
            begun = time.perf_counter()
            run = flown(case, 1000.0, tolerance, tolerance, np.inf, True)
            times.append(time.perf_counter() - begun)
        off_mm = 1e3 * abs(height(run) - exact)
        rows.append(dict(rtol=tolerance, seconds=float(np.median(times)), off_mm=off_mm))
    print(json.dumps(dict(
        peer=f"scipy {scipy.__version__} solve_ivp DOP853", exact_m=exact, rows=rows,
    )))


if __name__ == "__main__":
    if sys.argv[1:2] == ["data"]:
        data(sys.argv[2])
    else:
        bench()
