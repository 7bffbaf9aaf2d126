"""Paint straight on bare clay."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import PANELS, Build, Problem, Region, Severity, coats_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ReliefUnsealed:
    """Clay drinks; a sealer or a primer goes first."""

    kind: str = "rule"
    name: str = "relief-unsealed"
    title: str = "Paint on unsealed clay"
    severity: Severity = Severity.NOTE
    consequence: str = "Paint sinks in here and stands there, and it takes more of it"
    remedy: str = "Put seal or prime before it"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """The first coat on each relief, where it is neither sealer nor ground."""
        coats = coats_of(build.book)
        told_of = set()
        for panel in PANELS:
            first = next((c for c in coats if Region(panel, "relief") in c.regions), None)
            if first is None or first.role in ("seal", "ground") or first.key in told_of:
                continue
            told_of.add(first.key)
            yield told(self, first.path, f"'{first.key}' is the first coat on the relief")


PLUGIN = ReliefUnsealed()
