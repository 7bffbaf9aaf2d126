"""A bench too cold for acrylic to make a film."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class RoomCold:
    """Below its lowest temperature acrylic dries to powder."""

    kind: str = "rule"
    name: str = "room-cold"
    title: str = "A room too cold for acrylic"
    severity: Severity = Severity.ERROR
    consequence: str = "No film forms: the coat turns cloudy, cracks or rubs off as powder"
    remedy: str = "Paint and dry it in a warmer room, and keep paint and glue from frost"
    source: str = (
        "Just Paint (Golden Artist Colors), on the lowest film-forming temperature of acrylics"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """An error below the lowest temperature, a warning below the advised one."""
        room = build.book.bench.room.temperature
        wet = [coat for coat in coats_of(build.book) if coat.base == "water"]
        if room is None or not wet:
            return
        least, advised = (build.book.practice(f"acrylic-{end}") for end in ("least", "advised"))
        if room.value >= advised.value:
            return
        too_cold = room.value < least.value
        limit = least if too_cold else advised
        yield told(
            self,
            ("bench", "room", "temperature"),
            f"the room has {room.value:g} degC, and '{wet[0].key}' wants {limit.value:g} degC or "
            "more",
            Severity.ERROR if too_cold else Severity.WARNING,
        )


PLUGIN = RoomCold()
