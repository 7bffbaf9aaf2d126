"""Coverings: what a case is covered with."""
