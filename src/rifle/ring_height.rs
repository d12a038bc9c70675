//! Which ring height: from bell, barrel, rail and tube to the saddle height.
