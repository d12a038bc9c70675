//! Zero clicks: from the centre of a group on paper to clicks of the turrets.
