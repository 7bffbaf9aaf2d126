"""An elastic round boards that are too thin for its pull."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ElasticBendsBoard:
    """It pulls day and night, and always the same way."""

    kind: str = "rule"
    name: str = "elastic-bends-board"
    title: str = "An elastic that bows the boards"
    severity: Severity = Severity.WARNING
    consequence: str = "The boards bow over the fore-edge and stay bowed"
    remedy: str = "Take a thicker board, a weaker elastic, or ribbon ties"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Boards thinner than an elastic asks for."""
        closure = build.book.closure
        if closure is None or closure.plugin.name != "elastic":
            return
        board, least = (
            build.quantity("case.board.thickness"),
            build.book.default("elastic-board"),
        )
        if board.value < least.value:
            yield told(
                self,
                closure.path,
                f"an elastic round boards of {board.value:.1f} mm; {least.value:g} mm or more stay "
                "flat",
            )


PLUGIN = ElasticBendsBoard()
