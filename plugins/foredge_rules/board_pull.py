"""More, or stronger, layers outside a board than inside."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class BoardPull:
    """A board curls round the face that pulls harder as it dries."""

    kind: str = "rule"
    name: str = "board-pull"
    title: str = "A board that is pulled outwards"
    severity: Severity = Severity.WARNING
    consequence: str = "The boards bow outwards as they dry, and stay so"
    remedy: str = (
        "Paste a paper inside each board before the paste-down, two of them under leather, or "
        "keep the book under weight until it is dry"
    )
    source: str = (
        "E. Diehl, Bookbinding: Its Background and Technique, 1946, on lining boards; the weights "
        "from memory"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """The board whose outside pulls most beyond its inside; a note while it is not much."""
        boards = build.plan.moisture.balance
        if not boards:
            return
        worst = max(boards, key=lambda one: one.excess)
        least, much = (
            build.book.practice(name).value for name in ("pull-excess", "pull-excess-much")
        )
        if worst.excess <= least:
            return
        layers = ", ".join(dict.fromkeys(layer.title for layer in worst.outside))
        yield told(
            self,
            ("case", "covering"),
            f"the outside of the {worst.what.removeprefix('board-')} board pulls "
            f"{worst.pull_outside.value:.1f} times as hard as one sheet of paper ({layers}), the "
            f"inside {worst.pull_inside.value:.1f} times",
            Severity.WARNING if worst.excess >= much else Severity.NOTE,
        )


PLUGIN = BoardPull()
