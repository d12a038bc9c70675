//! Named figures answered from the direct formulas, JSON in and JSON out.
