"""More, or stronger, layers outside a board than inside."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Balance, Build, Path, Problem, Severity, reliefs_of
from foredge_rules.telling import told

SMALL = 0.01
"""So that two layers against one count as one more."""


@dataclass(frozen=True, slots=True)
class BoardPull:
    """A board curls round the face that pulls harder as it dries."""

    kind: str = "rule"
    name: str = "board-pull"
    title: str = "A board that is pulled outwards"
    severity: Severity = Severity.WARNING
    consequence: str = "The boards bow outwards as they dry, and stay so"
    remedy: str = (
        "Paste a paper inside each board before the paste-down, two of them under leather or "
        "much clay, or "
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
        if worst.excess < least - SMALL:
            return
        layers = ", ".join(dict.fromkeys(layer.title for layer in worst.outside))
        yield told(
            self,
            _cause(build, worst),
            f"the outside of the {worst.what.removeprefix('board-')} board pulls "
            f"{worst.pull_outside.value:.1f} times as hard as one sheet of paper ({layers}), the "
            f"inside {worst.pull_inside.value:.1f} times",
            Severity.WARNING if worst.excess >= much else Severity.NOTE,
        )


def _cause(build: Build, worst: Balance) -> Path:
    """The spec's line of the layer that pulls most: the covering, or a relief."""
    most = max(worst.outside, key=lambda layer: layer.pull.value)
    on = worst.what.removeprefix("board-")
    for relief in reliefs_of(build.book):
        if most.operation.startswith("sculpt.") and relief.options.on == on:
            return relief.path
    return ("case", "covering")


PLUGIN = BoardPull()
