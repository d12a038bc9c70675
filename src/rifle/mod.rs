//! The rifle under the sight: recoil, mounting, steadiness.
