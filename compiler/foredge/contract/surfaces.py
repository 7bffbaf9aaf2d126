"""What of the finished book can be coated: its regions, and the real area of each."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from foredge.contract.book import Book
from foredge.contract.sculpture import reliefs_of
from foredge.contract.work import Upstream
from foredge.quantity import Quantity, maximum, number, total

Target = Literal["faces", "front", "back", "spine", "relief", "edges", "lettering"]
"""What a finish goes on: ``faces`` are the whole outside, ``edges`` those of the boards."""

Left = Literal[
    "paste-downs", "joint", "cloth", "front", "back", "spine", "relief", "edges", "lettering"
]
"""What is kept clean of it; ``cloth`` is all of the covering that no relief hides."""

PANELS = ("front", "back", "spine")


@dataclass(frozen=True, slots=True, order=True)
class Region:
    """One piece of the outside: its face (a panel, ``joint``, ``edges``), and what it is there.

    ``kind`` is ``plain``, ``relief`` or ``letters``.
    """

    face: str
    kind: str = "plain"


@dataclass(frozen=True, slots=True)
class Patch:
    """What a coat covers: smooth area and the real surface of reliefs; None where there is none."""

    smooth: Quantity | None
    raised: Quantity | None

    @property
    def area(self) -> Quantity | None:
        """All of it."""
        parts = [part for part in (self.smooth, self.raised) if part is not None]
        return total(parts) if parts else None


@dataclass(frozen=True, slots=True)
class Surfaces:
    """The area of each region, relief regions by their real surface."""

    areas: Mapping[Region, Quantity]

    def patch(self, regions: Iterable[Region]) -> Patch:
        """The regions of ``regions`` that this book has, together."""
        found = [(region, self.areas[region]) for region in sorted(regions) if region in self.areas]
        smooth = [area for region, area in found if region.kind != "relief"]
        raised = [area for region, area in found if region.kind == "relief"]
        return Patch(total(smooth) if smooth else None, total(raised) if raised else None)

    def lettered(self, covers: Mapping[str, Quantity]) -> Surfaces:
        """These surfaces with letters on them, ``covers`` by face."""
        letters = {Region(face, "letters"): area for face, area in covers.items()}
        return Surfaces({**self.areas, **letters})


def relief_panels(book: Book) -> tuple[str, ...]:
    """The panels on which the spec plans a relief."""
    planned = {getattr(part.options, "on", "front") for part in reliefs_of(book)}
    return tuple(panel for panel in PANELS if panel in planned)


def lettered_panels(book: Book) -> tuple[str, ...]:
    """The panels that carry lettering or a pattern."""
    ornaments = [
        getattr(part.options, "on", "")
        for part in book.embellishment
        if getattr(part.plugin, "stage", "") == "finishing"
    ]
    return tuple(panel for panel in PANELS if panel in ornaments)


def regions_of(book: Book, on: Iterable[Target], leave: Iterable[Left]) -> frozenset[Region]:
    """The regions that ``on`` names less those that ``leave`` keeps clean."""
    reliefs = relief_panels(book)
    found: set[Region] = set()
    for target in on:
        if target == "lettering":
            found.update(Region(panel, "letters") for panel in PANELS)
        elif target == "relief":
            found.update(Region(panel, "relief") for panel in reliefs)
        elif target == "edges":
            found.add(Region("edges"))
        else:
            faces = (*PANELS, "joint") if target == "faces" else (target,)
            found.update(Region(face) for face in faces)
            found.update(Region(face, "relief") for face in faces if face in reliefs)
    return frozenset(region for region in found if not any(_left(region, one) for one in leave))


def _left(region: Region, left: Left) -> bool:
    if left == "cloth":
        return region.kind == "plain" and region.face != "edges"
    if left == "relief":
        return region.kind == "relief"
    if left == "lettering":
        return region.kind == "letters"
    return region.face == left


def overlap(upper: Iterable[Region], lower: Iterable[Region]) -> bool:
    """Whether a coat on ``upper`` lies on one on ``lower`` somewhere; letters lie on their face."""
    return not _ground(upper).isdisjoint(_ground(lower))


def _ground(regions: Iterable[Region]) -> frozenset[Region]:
    return frozenset(
        Region(region.face) if region.kind == "letters" else region for region in regions
    )


def surfaces_of(upstream: Upstream) -> Surfaces:
    """The outside of the cased book; a panel with a relief by its sculpted surface."""
    height = upstream.quantity("case.board.height")
    board = upstream.quantity("case.board.width")
    spine = upstream.quantity("case.spine.width")
    thick = upstream.quantity("case.board.thickness")
    joint = upstream.quantity("case.joint")
    areas = {
        Region("joint"): number(2) * joint * height,
        Region("edges"): number(2) * (2 * board + height) * thick,
    }
    for panel, width in (("front", board), ("back", board), ("spine", spine)):
        whole = width * height
        relief = _relief(upstream, panel, whole)
        if relief is None:
            areas[Region(panel)] = whole
        else:
            areas[Region(panel, "relief")], base = relief
            areas[Region(panel)] = maximum(whole - base, 0 * whole)
    return Surfaces(areas)


def _relief(upstream: Upstream, panel: str, whole: Quantity) -> tuple[Quantity, Quantity] | None:
    """Surface of the relief on ``panel`` and what it hides of it; None where there is none."""
    surface = known(upstream, f"sculpt.{panel}.surface")
    base = known(upstream, f"sculpt.{panel}.base")
    if surface is not None and base is not None:
        return surface, base
    # A relief of somebody else's stage: by the names that every such stage leaves.
    footprint = known(upstream, f"sculpt.footprint.{panel}")
    both = known(upstream, f"sculpt.surface.{panel}")
    if footprint is None or both is None:
        return None
    return both - (whole - footprint), footprint


def known(upstream: Upstream, name: str) -> Quantity | None:
    """The quantity ``name``, or None where no stage made it."""
    try:
        return upstream.quantity(name)
    except KeyError:
        return None
