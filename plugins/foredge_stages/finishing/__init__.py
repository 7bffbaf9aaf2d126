"""The stage ``finishing``: coats, lettering and patterns, the closure, and the closed book."""

from foredge_stages.finishing.stage import PLUGIN, Finishing

__all__ = ["PLUGIN", "Finishing"]
