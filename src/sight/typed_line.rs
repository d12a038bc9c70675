//! A sight as it is typed or stands on a box, read into what is known and what is not.
