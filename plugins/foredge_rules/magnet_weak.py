"""A magnet chosen before it was known what lies over it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class MagnetWeak:
    """Every layer between takes its share of the pull."""

    kind: str = "rule"
    name: str = "magnet-weak"
    title: str = "A magnet under too many layers"
    severity: Severity = Severity.WARNING
    consequence: str = "The flap falls open by itself"
    remedy: str = (
        "Settle cap, covering and flap first, then choose the magnet: a thinner cap or flap, or a "
        "larger magnet tried through all of them"
    )
    source: str = "from memory"

    def test(self, build: Build) -> Iterable[Problem]:
        """What is left of the pull through cap, covering and flap."""
        closure = build.book.closure
        if closure is None or closure.plugin.name != "magnets":
            return
        pull = build.quantity("finishing.closure.pull")
        least = build.book.practice("magnet-pull-least").value
        if pull.value >= least:
            return
        low = build.band(pull).low
        yield told(
            self,
            closure.path,
            f"cap, covering and flap leave the magnet {pull.value * 100:.0f} % of its pull "
            f"({low * 100:.0f} % if they come out thick); {least * 100:.0f} % or more hold a flap",
        )


PLUGIN = MagnetWeak()
