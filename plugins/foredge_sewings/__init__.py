"""Sewing structures: how gatherings become a block."""
