"""A closure that lies over the lettering."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from foredge.contract import Build, Look, Problem, Severity
from foredge_rules.telling import told

Box = tuple[float, float, float, float]
"""Left, upper, right and lower side in mm."""

TOUCH_MM = 1.0
"""Letters and closure may touch by this much: a strap is not laid to the millimetre."""


@dataclass(frozen=True, slots=True)
class ClosureOverLetters:
    """What the strap covers, nobody reads."""

    kind: str = "rule"
    name: str = "closure-over-letters"
    title: str = "A closure that hides the lettering"
    severity: Severity = Severity.NOTE
    consequence: str = "The words are hidden while the book is closed, and the closure rubs them"
    remedy: str = "Give the lettering a box beside the closure, or move the closure"
    source: str = "geometry"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each face where a closure crosses letters."""
        looks = [one for one in build.whole.looks if isinstance(one, Look)]
        closures = [one for one in looks if one.layer == "closure"]
        faces = dict.fromkeys(one.on for one in looks if one.layer == "letters")
        for face in faces:
            words = [box for one in looks if one.layer == "letters" and one.on == face
                     for box in _boxes(one)]  # fmt: skip
            shut = [box for one in closures if one.on == face for box in _boxes(one)]
            if any(_cross(word, strap) for word in words for strap in shut):
                yield told(
                    self, _place(build, face), f"the closure lies over letters on the {face}"
                )


def _place(build: Build, face: str) -> tuple[str | int, ...]:
    for part in build.book.embellishment:
        if part.plugin.name == "lettering" and getattr(part.options, "on", "") == face:
            return part.path
    return ("closure",)


def _boxes(look: Look) -> Iterator[Box]:
    """The room each piece takes, and each line with its width; a whole face takes none."""
    half = look.width / 2
    for rings in look.pieces:
        points = [point for ring in rings for point in ring]
        if points:
            yield _around(points, 0.0)
    for line in look.lines:
        yield _around(list(line), half)


def _around(points: list[tuple[float, float]], more: float) -> Box:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs) - more, min(ys) - more, max(xs) + more, max(ys) + more


def _cross(one: Box, other: Box) -> bool:
    wide = min(one[2], other[2]) - max(one[0], other[0])
    high = min(one[3], other[3]) - max(one[1], other[1])
    return wide > TOUCH_MM and high > TOUCH_MM


PLUGIN = ClosureOverLetters()
