"""Spines of a case: what stiffens the back, if anything."""
