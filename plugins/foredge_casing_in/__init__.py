"""Casing-in: how the block is joined to its case."""
