"""Foredge compiles a spec of one handmade, decorated book into what its maker needs at the bench."""

__version__ = "0.1.0"
