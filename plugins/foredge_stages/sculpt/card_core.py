"""A core of card: layers cut to the contours, glued up one on the other under weight."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

from foredge.contract import (
    LENGTH,
    Figures,
    Operation,
    Origin,
    Piece,
    Quantity,
    Shaped,
    StageResult,
    Text,
    Wetting,
    board_figures,
    cautions,
    ceil,
    cited,
    dry_in_room,
    given,
    glue,
    leaf,
    outline_of,
    say,
    top_of,
    total,
    wet,
)
from foredge_stages.sculpt.armature import Armature
from foredge_stages.sculpt.reading import Relief

ROW = "carton"
"""The row of the board table that card without one is read by."""

CUTS = 4
"""Cuts with the knife for one layer: its four sides, near enough."""


@dataclass(frozen=True, slots=True)
class _Card:
    """``layers`` of the highest part; ``area`` and ``mass`` of all layers together; ``pieces``
    to cut, ``count`` of them."""

    layers: Quantity
    area: Quantity
    mass: Quantity
    pieces: tuple[Piece, ...]
    count: Quantity


def build_card(relief: Relief, after: tuple[str, ...], marked: tuple[Text, ...]) -> Armature:
    """Cut, glue up, let dry under weight. ``marked`` are steps that bring the outline on."""
    card = _card(relief)
    report, find = relief.report, relief.book.table
    known = relief.called(report.core_volume, report.core_base, report.core_height)
    build = _build(relief, card, after, marked)
    work = StageResult(
        quantities=(*known, card.layers, card.area, card.mass),
        pieces=card.pieces,
        operations=(build,),
    )
    glued = card.area * find("adhesives", "pva", "spread") * (1 - find("adhesives", "pva", "water"))
    return Armature(work, (card.mass, glued), (build.id,))


def _card(relief: Relief) -> _Card:
    book, on, report = relief.book, relief.on, relief.report
    figures = board_figures(book, relief.options.core.card, ROW)
    thick = figures.thickness + book.practice("glue-film")
    layers = ceil(report.core_height / thick).named(
        f"sculpt.card.{on}.layers",
        label=f"layers of card in the core, {on}",
        rule="the height of the core by one layer and its glue",
        source=cited(figures.thickness, "the maker's choice"),
    )
    area = (report.core_volume / thick).named(
        f"sculpt.card.{on}.area",
        label=f"card in the core, {on}",
        rule="volume of the core by one layer and its glue",
        source="geometry",
    )
    mass = _mass(figures, area, on)
    pieces = tuple(_pieces(relief, thick))
    return _Card(layers, area, mass, pieces, total([piece.count for piece in pieces]))


def _mass(figures: Figures, area: Quantity, on: str) -> Quantity:
    return (area * figures.grammage).named(
        f"sculpt.card.{on}.mass",
        label=f"mass of the card in the core, {on}",
        rule="its area by its grammage",
        source=cited(figures.grammage, "the maker's choice"),
    )


def _pieces(relief: Relief, thick: Quantity) -> Iterator[Piece]:
    """A rectangle for every layer of a part; the contour is cut out of it."""
    for place, one in enumerate(relief.made("core"), start=1):
        wide, high, rise = _room(relief, one)
        yield Piece(
            f"sculpt.card.{relief.on}.{place}",
            f"Card for {one.name}",
            ceil(rise / thick),
            relief.book.size_up(wide),
            relief.book.size_up(high),
            "height",
            stock=relief.options.core.card,
            shape="cut to the contours of the plan",
        )


def _room(relief: Relief, one: Shaped) -> tuple[Quantity, Quantity, Quantity]:
    """Width, height and rise of one part of the core, read from its outline with the skin."""
    points = [point for ring in outline_of(one.shape, relief.skin) for point in ring]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    rise = max(top_of(one.shape, relief.skin) - relief.figures.thickness.value, 0.1)
    origin = Origin("constant", text="read from the outline")

    def read(mm: float) -> Quantity:
        place = leaf(mm, LENGTH, f"sculpt.{relief.on}.card", origin)
        return given(place, relief.report.footprint_area)

    return read(max(xs) - min(xs)), read(max(ys) - min(ys)), read(rise)


def _build(
    relief: Relief, card: _Card, after: tuple[str, ...], marked: tuple[Text, ...]
) -> Operation:
    book = relief.book
    names = ", ".join(one.name for one in relief.made("core"))
    dry = dry_in_room(book, book.table("drying", "board-many-layers", "next"), shut=True)
    return Operation(
        relief.op("fix-core"),
        f"Build the core of card on the {relief.where}",
        (
            *marked,
            say("Cut the layers of card to the contours of the plan: {names}.", names=names),
            say("{layers} layers at the highest, the grain along the spine like the board's.",
                layers=card.layers),
            say("Keep each contour {skin} inside the outline drawn: the skin comes on top.",
                skin=relief.figures.thickness),
            say("Glue thinly, layer on layer; after every four let it dry under weight."),
            say("Water that is shut in between layers pulls the board round later."),
            say("Pare the steps off with a knife, and brush glue and water, 1 to 1, over it."),
        ),
        book.practice("hand-set-up")
        + card.count * (CUTS * book.practice("hand-cut") + book.practice("hand-glue-face")),
        after=after,
        wait=dry,
        waiting="under weight, blotters on top",
        resources=("hands", "weights"),
        cautions=("blade", "lifting-weights", *cautions(book, "adhesives", "pva")),
        pieces=tuple(piece.name for piece in card.pieces),
        uses=(glue(book, "pva", card.area, f"card core on the {relief.where}"),),
        wettings=_water(relief, card, dry),
        tools=("knife", "cutting mat", "glue brush", "bone folder", "blotters", "weights"),
        splits=True,
    )  # fmt: skip


def _water(relief: Relief, card: _Card, dry: Quantity) -> tuple[Wetting, ...]:
    """Every layer pulls like a sheet of paper over the foot of the core."""
    if relief.on == "spine":
        return ()
    book, base = relief.book, relief.report.core_base
    pull = book.practice("pull-paper") * card.layers
    water = wet(
        book, "pva", card.area, f"board-{relief.on}", "outside", dry, layer="core", pull=pull
    )
    return (replace(water, area=base),)
