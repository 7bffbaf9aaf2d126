"""Drawings: one model in millimetres, and its writers."""
