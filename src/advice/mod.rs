//! Ranked specifications with reasons: occasions, candidates, margins, picks.
