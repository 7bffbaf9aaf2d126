"""Foredge: from the spec of one handmade, decorated book to what its maker needs at the bench."""

__version__ = "0.1.0"
