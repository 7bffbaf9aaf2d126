"""The reliefs of a book, their panels and parts: what the sculpt stage and its rules share."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from foredge.contract.book import Book
from foredge.contract.measures import Part
from foredge.contract.relief_parts import Panel, relief_job, shape_part
from foredge.contract.skin import SKIN, SkinFigures
from foredge.contract.solids import Cap, Frustum, Mound, Placed, ReliefShape, Ridge, Ring, Tube
from foredge.problem import Problem
from foredge.quantity import Quantity, minimum

RELIEF_STAGE = "sculpt"
DEFAULT_SKIN = "paper-clay"


@dataclass(frozen=True, slots=True)
class Shaped:
    """One part of a relief as solids; ``place`` counts it in the spec, ``name`` on the sheet."""

    part: Part[Any]
    name: str
    shape: ReliefShape
    note: str = ""


def reliefs_of(book: Book) -> tuple[Part[Any], ...]:
    """The items under ``embellishment`` that the sculpt stage makes, in the spec's order."""
    return tuple(
        part for part in book.embellishment if getattr(part.plugin, "stage", None) == RELIEF_STAGE
    )


def panel_of(find: Callable[[str], Quantity], on: str) -> Panel:
    """The board or spine a relief stands on; ``find`` gives the case's quantities by name."""
    width = "case.spine.width" if on == "spine" else "case.board.width"
    return Panel(on, find(width), find("case.board.height"))


def skin_of(book: Book, relief: Part[Any]) -> Part[Any]:
    """The relief's skin, or the usual one."""
    return book.part(relief.options.skin, SKIN, DEFAULT_SKIN, (*relief.path, "skin"))


def figures_of(book: Book, relief: Part[Any]) -> SkinFigures:
    """What the relief's skin is like."""
    skin = skin_of(book, relief)
    found: SkinFigures = skin.plugin.figures(book, skin)
    return found


def shapes_of(
    book: Book, relief: Part[Any], panel: Panel
) -> tuple[tuple[Shaped, ...], tuple[Problem, ...]]:
    """Every part of ``relief`` that can be made, and what its parts have to say."""
    shaped: list[Shaped] = []
    problems: list[Problem] = []
    for place, part in enumerate(relief.options.parts, start=1):
        result = shape_part(relief_job(book, part, panel))
        problems += result.problems
        if result.shape is not None:
            name = part.options.name or f"{part.plugin.title.lower()} {place}"
            shaped.append(Shaped(part, name, result.shape, result.note))
    return tuple(shaped), tuple(problems)


def depth_of(piece: Placed[Quantity]) -> Quantity:
    """How thick one solid is, the way its water has to go: the least of height and width."""
    match piece.solid:
        case Cap(base_radius=radius, height=height):
            return minimum(2 * radius, height)
        case Mound(radius_x=across, radius_y=along, height=height):
            return minimum(2 * across, 2 * along, height)
        case Frustum(bottom_radius=radius, height=height):
            return minimum(2 * radius, height)
        case Ring(width=width, height=height, sunk=sunk):
            return minimum(width, height - sunk)
        case Ridge(width=width, height=height):
            return minimum(width, height)
        case Tube(radii=radii):
            return 2 * max(radii, key=lambda radius: radius.value)
        case slab:
            return 1 * slab.height
