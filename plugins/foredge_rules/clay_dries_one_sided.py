"""Clay that can dry upwards only, and is too thick for that."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Part, Path, Problem, Severity, reliefs_of, shut_below
from foredge_rules.telling import told

HOUR = 3600.0


@dataclass(frozen=True, slots=True)
class ClayDriesOneSided:
    """Foil above the board and a ground that takes no water leave one way out.

    Time goes with the square of the way the water has, so twice the way is up to four times
    as long (diffusion; J. Crank, The Mathematics of Diffusion, 1975, ch. 4, from memory).
    """

    kind: str = "rule"
    name: str = "clay-dries-one-sided"
    title: str = "Clay that dries from one side only"
    severity: Severity = Severity.WARNING
    consequence: str = "It stays wet long enough to go mouldy under a dry crust"
    remedy: str = (
        "Make the layer thinner, move the air with a fan, turn it often, or take a core of paper; "
        "and leave the evenings that the schedule gives it"
    )
    source: str = "from memory; Ultimate Paper Mache, 'Dry paper mache'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief on a ground that takes no water, by how long a layer stays wet."""
        book = build.book
        most = book.practice("clay-wet-most").value
        times = book.practice("climate-one-sided").value
        for relief in reliefs_of(book):
            ground, on = shut_below(book, relief), relief.options.on
            dries = build.quantity(f"sculpt.layer.{on}.dries").value
            if not ground or dries <= most:
                continue
            yield told(
                self,
                _cause(relief),
                f"{ground} takes no water: a layer on the {on} dries upwards only, about "
                f"{times:g} times as slowly, and needs {dries / HOUR:.0f} h; "
                f"{most / HOUR:.0f} h are safe",
            )


def _cause(relief: Part[object]) -> Path:
    """The line that shuts the clay in: the sealing, or the covering."""
    bare = getattr(relief.options, "made_on", "") == "bare-board"
    return (*relief.path, "seal") if bare else ("case", "covering")


PLUGIN = ClayDriesOneSided()
