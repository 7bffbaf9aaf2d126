"""Pieces laid out on the sheets of the shelf."""
