"""Boards: what the sides of a case are made of."""
