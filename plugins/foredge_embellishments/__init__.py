"""Embellishments: what is laid on the book, from the board outwards."""
