"""Gloss or tacky outer coats on the covers."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Coat, Problem, Severity, coats_of
from foredge_rules.telling import told

_STAYS_TACKY = "decoupage-glue"


@dataclass(frozen=True, slots=True)
class FacesStick:
    """Acrylic softens in warmth: what shines, clings."""

    kind: str = "rule"
    name: str = "faces-stick"
    title: str = "Outer coats that stick"
    severity: Severity = Severity.WARNING
    consequence: str = "Covers stick to their neighbours and to the wrapping, and paint tears off"
    remedy: str = "End with a matte varnish or with wax; keep baking parchment between faces"
    source: str = (
        "Milliande, 'How to keep art journal pages from sticking together'; Mixed Media Club, "
        "'How to keep pages from sticking together'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """The outermost coat of front and back, where it is gloss or decoupage glue."""
        coats = coats_of(build.book)
        outer = dict.fromkeys(one for face in ("front", "back") for one in _outermost(coats, face))
        for coat in outer:
            if coat.row == _STAYS_TACKY:
                yield told(self, coat.path, f"'{coat.key}' is the outermost coat, and stays tacky")
            elif coat.gloss == "gloss":
                yield told(self, coat.path, f"'{coat.key}' is the outermost coat, and is gloss")


def _outermost(coats: Iterable[Coat], face: str) -> list[Coat]:
    """The last coat on each kind of region of a face, where it goes over all of it."""
    last: dict[object, Coat] = {}
    for coat in coats:
        if coat.role not in ("seal", "ground", "protect", "wax"):
            continue
        for region in coat.regions:
            if region.face == face:
                last[region] = coat
    return list(dict.fromkeys(last.values()))


PLUGIN = FacesStick()
