"""A relief so high that the book neither shelves nor lies level."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ReliefHigh:
    """How it stands on a shelf, and how it lies open and shut."""

    kind: str = "rule"
    name: str = "relief-high"
    title: str = "A high relief"
    severity: Severity = Severity.NOTE
    consequence: str = (
        "On a shelf it scars its neighbours, and closures measured without it are short"
    )
    remedy: str = (
        "Keep the book lying, or in a box; three or four points of one height, far apart, let a "
        "cover rest level; measure straps and clasps after the relief"
    )
    source: str = (
        "M. T. Roberts and D. Etherington, Bookbinding and the Conservation of Books, 1982, on "
        "bosses; the height from memory"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """The height of each relief, and what follows from it."""
        limit = build.book.practice("relief-high").value
        named = {one.name: one for one in build.whole.quantities}
        for relief in reliefs_of(build.book):
            on = relief.options.on
            height = named[f"sculpt.height.{on}"].value
            if height <= limit + SMALL_MM:
                continue
            text = f"the relief on the {on} stands {height:.3g} mm high"
            tilt = named.get(f"sculpt.tilt.{on}")
            if tilt is not None:
                text += f"; laid open on a table, the cover tilts by {tilt.value:.0f} degrees"
            if on == "back":
                text += ", and shut, the book lies on its relief"
            yield told(self, relief.path, text)


SMALL_MM = 0.05
"""Less than this no hand can tell."""

PLUGIN = ReliefHigh()
