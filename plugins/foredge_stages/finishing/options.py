"""The stage has no options of its own: its section is the list of coats."""

from __future__ import annotations

from foredge.contract import Options


class FinishingOptions(Options, frozen=True, kw_only=True):
    """Nothing beside what every section takes."""
