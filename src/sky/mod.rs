//! Light on the ground: Sun, Moon, twilight, cloud, cover, surfaces, coats.
