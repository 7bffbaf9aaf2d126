"""An opaque coat over the fine work that was done before it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, coats_of
from foredge_rules.telling import told

OPAQUE = frozenset({"gesso", "base-coat", "chalk-paint", "texture-paint"})
FINE = frozenset({"wash", "dry-brush", "highlight", "metallic", "glitter", "leaf-size"})


@dataclass(frozen=True, slots=True)
class CoatHides:
    """From dark to light, from flat colour to fine work."""

    kind: str = "rule"
    name: str = "coat-hides-work"
    title: str = "An opaque coat over fine work"
    severity: Severity = Severity.WARNING
    consequence: str = "It covers what was done before it"
    remedy: str = "Primer, texture and base coat first; then wash, dry brush, metal and leaf"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every opaque coat that lies on all of an earlier fine one."""
        coats = coats_of(build.book)
        for place, coat in enumerate(coats):
            if coat.row not in OPAQUE or build.book.finishing[place].options.share is not None:
                continue
            under = [one for one in coats[:place] if one.row in FINE and one.regions & coat.regions]
            if under:
                yield told(self, coat.path, f"'{coat.key}' goes over '{under[-1].key}'")


PLUGIN = CoatHides()
