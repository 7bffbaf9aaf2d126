"""The panel and the box on it, as quantities, and the way the text runs in it."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    LENGTH,
    Origin,
    OrnamentJob,
    Point,
    Problem,
    Quantity,
    cited,
    error,
    leaf,
    maximum,
    note,
)

_NONE = leaf(0.0, LENGTH, "lettering.none", Origin("constant"), label="nothing")


@dataclass(frozen=True, slots=True)
class Place:
    """The box on its panel. ``left`` is as one faces the panel, from its left edge.

    ``runs`` is ``across``, ``down`` or ``up``; ``along`` is the box's measure in the way
    the lines run, ``deep`` the one across them.
    """

    panel_width: Quantity
    panel_height: Quantity
    left: Quantity
    top: Quantity
    width: Quantity
    height: Quantity
    runs: str

    @property
    def along(self) -> Quantity:
        """Room for the length of a line."""
        return self.width if self.runs == "across" else self.height

    @property
    def deep(self) -> Quantity:
        """Room for the lines side by side."""
        return self.height if self.runs == "across" else self.width

    def on_panel(self, point: Point) -> Point:
        """``point`` of the text (x along the lines, y across them, mm) on the panel."""
        x, y = point
        left, top = self.left.value, self.top.value
        if self.runs == "down":
            return left + self.width.value - y, top + x
        if self.runs == "up":
            return left + y, top + self.height.value - x
        return left + x, top + y


def find_place(job: OrnamentJob) -> Place:
    """The box that the options ask for, or the usual one of the panel."""
    options, book = job.part.options, job.book
    box = options.box
    wide, high = job.faces.size(options.on)
    if options.on == "spine":
        tail, head = book.default("spine-tail-free"), book.default("letter-head-free")
        width = box.width if box.width is not None else wide
        top = box.y if box.y is not None else head
        height = box.height if box.height is not None else maximum(high - tail - top, _NONE)
    else:
        width = box.width if box.width is not None else wide * book.default("letter-box-width")
        height = box.height if box.height is not None else high * book.default("letter-box-height")
        top = box.y if box.y is not None else (high - height) / 2
    from_spine = box.x if box.x is not None else (wide - width) / 2
    left = wide - from_spine - width if options.on == "back" else from_spine
    runs = options.direction if options.on == "spine" else "across"
    return Place(wide, high, left, top, width, height, runs)


def place_problems(job: OrnamentJob, place: Place) -> list[Problem]:
    """A box that leaves its panel, and a spine title that reaches too far to the tail."""
    path = (*job.part.path, "box")
    over = max(
        -place.left.value,
        -place.top.value,
        place.left.value + place.width.value - place.panel_width.value,
        place.top.value + place.height.value - place.panel_height.value,
    )
    if over > 0.05:
        return [
            error(
                path,
                f"the box for the letters reaches {over:.1f} mm over the edge of a panel "
                f"{place.panel_width.value:.1f} mm wide and {place.panel_height.value:.1f} mm high",
                "lettering-box-outside",
                remedy="Make it smaller, or move it",
            )
        ]
    return _tail(job, place) + _across(job, place)


def _tail(job: OrnamentJob, place: Place) -> list[Problem]:
    free = job.book.default("spine-tail-free")
    left = place.panel_height.value - place.top.value - place.height.value
    if job.part.options.on != "spine" or left >= free.value - 0.05:
        return []
    return [
        note(
            (*job.part.path, "box"),
            f"the box leaves {left:.1f} mm free at the tail of the spine; the standard keeps "
            f"{free.value:.0f} mm free",
            "spine-tail-free",
            consequence="A library's label would cover the title",
            remedy="Move or shorten the box, if the book is to stand among others",
            source=cited(free),
        )
    ]


def _across(job: OrnamentJob, place: Place) -> list[Problem]:
    narrow = job.book.default("letter-across-least")
    if job.part.options.on != "spine" or place.runs != "across":
        return []
    if place.panel_width.value >= narrow.value:
        return []
    return [
        note(
            (*job.part.path, "direction"),
            f"the spine is {place.panel_width.value:.1f} mm wide: too narrow for a long word "
            "across it",
            "spine-title-across",
            remedy="Let the title run down the spine",
            source=cited(narrow),
        )
    ]
