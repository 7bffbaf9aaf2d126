"""Skins of a relief: what the clay on the core is like, and how it is mixed.

A skin dries to less than was put on. Left free it shrinks by its linear shrinkage s in each
direction, so its volume by (1 - s) three times. On a rigid core it cannot draw in sideways:
what is lost is thickness, and where that does not suffice it cracks.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any, Protocol

from msgspec import Meta

from foredge.contract.book import Book
from foredge.contract.card import cited
from foredge.contract.drying import dry_in_oven, dry_in_room
from foredge.contract.glue import cautions
from foredge.contract.measures import Count, Density, Duration, Length, Part, Ratio
from foredge.contract.options import PartOptions
from foredge.contract.plugin import PartPlugin
from foredge.contract.text import Text
from foredge.contract.work import StageResult
from foredge.dimension import RATIO
from foredge.quantity import Quantity, ceil, leaf, opaque

SKIN = "skin"
"""The kind of skins."""

CHOICE = "the maker's choice"


class SkinOptions(PartOptions, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What every skin can be told; what is left out is its row of the table ``clays``."""

    thickness: (
        Annotated[Length, Meta(description="Thickness of the skin when it is dry.")] | None
    ) = None
    layer: (
        Annotated[Length, Meta(description="Thickest layer put on at a time, as it dries.")] | None
    ) = None
    layers: (
        Annotated[Count, Meta(description="How many layers; by the thickest one if left out.")]
        | None
    ) = None
    shrinkage: (
        Annotated[Ratio, Meta(description="What a free bar loses of its length in drying.")] | None
    ) = None
    solids: Annotated[Ratio, Meta(description="Share of the wet mass that stays.")] | None = None
    wet_density: Annotated[Density, Meta(description="Of the fresh clay.")] | None = None
    dry_density: Annotated[Density, Meta(description="Of the dry clay.")] | None = None
    dry_time: (
        Annotated[
            Duration,
            Meta(description="Until the next layer, for a layer as thick as the table's."),
        ]
        | None
    ) = None
    waste: (
        Annotated[Ratio, Meta(description="Clay that stays in the bowl and on the hands.")] | None
    ) = None


@dataclass(frozen=True, slots=True)
class SkinFigures:
    """What a skin is like. ``row`` is its row of ``clays``, ``noun`` what a sentence calls it.

    ``thickness`` (dry, mm) is as asked for, ``layer`` the thickest one advised at a time and
    ``layer_most`` the thickest there may be, ``layers`` how many make the thickness;
    ``layers_chosen`` where the spec says so. ``modelled`` is false for sheets that only follow
    their core. ``shrinkage`` is linear, a share. A layer of
    ``dry_layer`` takes ``dry_time``, another one (thickness / dry_layer) to the power
    ``dry_exponent`` of it. ``sets`` is how long it can be worked where its filler sets by
    itself, None where it only dries.
    """

    row: str
    noun: str
    thickness: Quantity
    layer: Quantity
    layer_most: Quantity
    layers: Quantity
    layers_chosen: bool
    solids: Quantity
    wet_density: Quantity
    dry_density: Quantity
    shrinkage: Quantity
    dry_layer: Quantity
    dry_time: Quantity
    dry_exponent: Quantity
    waste: Quantity
    cautions: tuple[str, ...]
    source: str
    modelled: bool = True
    sets: Quantity | None = None

    @property
    def kept(self) -> Quantity:
        """Dry volume over wet volume: the shrinkage compounded in three directions."""
        stays = 1 - self.shrinkage
        return stays * stays * stays


@dataclass(frozen=True, slots=True)
class SkinJob:
    """So much skin to be mixed, for all reliefs that share it.

    ``wet`` is the volume put on (mm3), without waste; ``area`` the surface it covers, all
    layers of a skin as one; ``offcuts`` the mass of paper the text block leaves. Names of
    quantities start with ``prefix``; ``suffix`` keeps operations of a second skin apart. What
    takes days (soaking) is begun after ``begin``, the rest after ``due``, when the skin is wanted.
    """

    book: Book
    part: Part[Any]
    figures: SkinFigures
    wet: Quantity
    area: Quantity
    offcuts: Quantity
    prefix: str
    suffix: str = ""
    begin: tuple[str, ...] = ()
    due: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Setting:
    """What is stirred in for each layer, because it sets: masses by volume of fresh clay."""

    powder: Quantity
    water: Quantity


@dataclass(frozen=True, slots=True)
class SkinResult:
    """``ready`` is the operation after which the skin can be put on; ``lay`` says how that
    is done, one thing a line. ``setting`` is what goes in only then."""

    work: StageResult
    ready: str
    lay: tuple[Text, ...]
    setting: Setting | None = None


class Skin(PartPlugin, Protocol):
    """What covers the cores of a relief; kind ``skin``."""

    def figures(self, book: Book, part: Part[Any]) -> SkinFigures:
        """What it is like, whatever the amount."""
        ...

    def mix(self, job: SkinJob) -> SkinResult:
        """Recipe, materials, and the operations until it is ready."""
        ...


def skin_figures(
    book: Book, part: Part[Any], row: str, noun: str, thickness: Quantity | None = None
) -> SkinFigures:
    """The figures of ``row`` of the table ``clays``, with what the spec says in its place.

    ``thickness`` is that of a skin that follows from something else; usually one layer.
    """
    said: SkinOptions = part.options

    def figure(name: str, own: Quantity | None) -> Quantity:
        return book.table("clays", row, name) if own is None else own

    layer = _decided(figure("layer", said.layer))
    thick = said.thickness if said.thickness is not None else thickness
    thick = layer if thick is None else thick
    return SkinFigures(
        row=row,
        noun=noun,
        thickness=thick,
        layer=layer,
        layer_most=figure("layer.most", said.layer),
        layers=said.layers if said.layers is not None else ceil(thick / layer),
        layers_chosen=said.layers is not None,
        solids=figure("solids", said.solids),
        wet_density=figure("wet_density", said.wet_density),
        dry_density=figure("dry_density", said.dry_density),
        shrinkage=figure("shrinkage", said.shrinkage),
        dry_layer=book.table("clays", row, "dry_layer"),
        dry_time=figure("dry_time", said.dry_time),
        dry_exponent=book.table("clays", row, "dry_exponent"),
        waste=said.waste if said.waste is not None else book.default("waste-clay"),
        cautions=cautions(book, "clays", row),
        source=cited(book.table("clays", row, "shrinkage"), CHOICE),
        modelled=book.words("clays", row, "kind") != "sheet",
    )


def _decided(q: Quantity) -> Quantity:
    """A layer is what the maker makes it: the range of opinion is no uncertainty."""
    if q.origin is None or q.low == q.high:
        return q
    return leaf(q.value, q.dimension, q.name or "layer", q.origin, label=q.label)


def drying_of(
    book: Book,
    figures: SkinFigures,
    thickness: Quantity,
    *,
    one_sided: bool = False,
    oven: bool = False,
) -> Quantity:
    """How long clay of ``thickness`` (mm, dry) takes until the next layer, in the book's room.

    ``one_sided``: the water can leave it upwards only. ``oven``: it stands in a slow oven.
    """
    ratio = thickness / figures.dry_layer
    longer = opaque(power, (ratio, figures.dry_exponent), RATIO)
    time = figures.dry_time * longer
    if one_sided:
        time = time * book.practice("climate-one-sided")
    return dry_in_oven(book, time) if oven else dry_in_room(book, time)


def power(base: float, exponent: float) -> float:
    """``base`` to the ``exponent``; 0 for a layer that is not there."""
    return float(base**exponent) if base > 0 else 0.0
