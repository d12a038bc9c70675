//! A shop's stock list: parse, check, match.
