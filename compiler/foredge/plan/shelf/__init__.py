"""Need against shelf, and what must be bought."""
