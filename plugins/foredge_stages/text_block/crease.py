"""Where the pieces lie on a sheet; an old crease may become a folio's fold."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    LENGTH,
    Origin,
    Problem,
    Quantity,
    Sheet,
    faces,
    floor,
    given,
    leaf,
    note,
    number,
)
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.sizes import Sizes
from foredge_stages.text_block.terms import GEOMETRY, mm, name


@dataclass(frozen=True, slots=True)
class Strip:
    """An off-cut of one sheet, as it lies: ``width`` across the folds."""

    name: str
    width: Quantity
    height: Quantity


@dataclass(frozen=True, slots=True)
class Placement:
    """``columns`` side by side across the fold from ``start`` on, ``rows`` along it.

    ``across`` and ``down`` are the sheet's sides, across and along the folds. ``crease`` is
    the column whose fold is the old crease, None where there is none in use.
    """

    across: Quantity
    down: Quantity
    columns: Quantity
    rows: Quantity
    start: Quantity
    crease: Quantity | None
    strips: tuple[Strip, ...]


def place(options: TextBlockOptions, sheet: Sheet, size: Sizes, turned: bool) -> Placement:
    """Pieces from the first edge on, or counted from a crease where that costs none."""
    across, down = (sheet.height, sheet.width) if turned else (sheet.width, sheet.height)
    columns, rows = floor(across / size.piece_width), floor(down / size.piece_height)
    start = leaf(0.0, LENGTH, "sheet edge", Origin("constant"))
    crease = _crease(options, sheet, size, turned, across, columns)
    if crease is not None:
        before = floor((crease - size.piece_width / 2) / size.piece_width)
        start = crease - size.piece_width / 2 - before * size.piece_width
    left = across - start - columns * size.piece_width
    strips = [
        Strip("first edge", start, down),
        Strip("side", left, down),
        Strip("end", columns * size.piece_width, down - rows * size.piece_height),
    ]
    kept = tuple(strip for strip in strips if strip.width.value > 0.5 and strip.height.value > 0.5)
    kept = tuple(Strip(strip.name.replace(" ", "_"), strip.width, strip.height) for strip in kept)
    return Placement(across, down, columns, rows, start, crease, kept)


def _crease(
    options: TextBlockOptions,
    sheet: Sheet,
    size: Sizes,
    turned: bool,
    across: Quantity,
    columns: Quantity,
) -> Quantity | None:
    """The crease that can be a fold without losing a column, where the spec wants it used."""
    own = faces(sheet)[0]
    if options.crease == "ignore" or options.folded != 1 or own.spoiled:
        return None
    for crease in sheet.creases:
        # A crease "along the height" runs like the folds of pieces that are not turned.
        if (crease.along == "width") != turned:
            continue
        half = size.piece_width / 2
        before = floor((crease.at - half) / size.piece_width)
        after = floor((across - crease.at - half) / size.piece_width)
        room = min(crease.at.value, across.value - crease.at.value) >= half.value
        if room and (before + after + number(1)).value >= columns.value:
            return given(crease.at, before, after)
    return None


def crease_used(placement: Placement) -> tuple[Quantity, ...]:
    """The crease that becomes a fold, named."""
    if placement.crease is None:
        return ()
    return (
        placement.crease.named(
            name("crease"),
            label="old crease that becomes a fold, from the edge",
            rule="used where it costs no folio",
            source=GEOMETRY,
        ),
    )


def creased_leaves(options: TextBlockOptions, sheet: Sheet, placement: Placement) -> list[Problem]:
    """A note for each old crease that will run through leaves."""
    return [
        note(
            ("stock", options.paper, "creases", place),
            f"the old crease {mm(crease.at)} from the "
            f"{'left' if crease.along == 'height' else 'head'} will run through leaves",
            "crease-in-leaf",
            consequence="A worn crease tears, and shows through",
            remedy="Turn its leaves to the middle of a gathering, or cut it away",
            source="common practice",
        )
        for place, crease in enumerate(sheet.creases)
        if crease.at.value < (sheet.width if crease.along == "height" else sheet.height).value
        and (placement.crease is None or crease.at.value != placement.crease.value)
    ]
