"""A thick or stiff coat over the joints."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Region, Severity, coats_of
from foredge_rules.telling import told

STIFF = frozenset({"gesso", "chalk-paint", "texture-paint"})
"""Rows of the paints table that do not bend."""


@dataclass(frozen=True, slots=True)
class CoatStiffensJoint:
    """The joint bends at every opening; a thick coat cannot."""

    kind: str = "rule"
    name: str = "coat-stiffens-joint"
    title: str = "A stiff coat over the joints"
    severity: Severity = Severity.WARNING
    consequence: str = "It cracks along the joint the first time the book is opened, and flakes"
    remedy: str = (
        "Put joint under leave, and paint the joints thinly with acrylic if they must match"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Every ground or texture that goes over the joints."""
        for coat in coats_of(build.book):
            if coat.row in STIFF and Region("joint") in coat.regions:
                yield told(self, coat.path, f"'{coat.key}' goes over the joints")


PLUGIN = CoatStiffensJoint()
