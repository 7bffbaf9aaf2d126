"""Patterns of small pieces over a paste-down or a panel: rows, tiles, strips, nets."""
