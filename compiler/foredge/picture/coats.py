"""What the coats make of a surface: its colour, and where other colours lie on it."""

from __future__ import annotations

from dataclasses import dataclass, replace

from foredge.contract import Book, Coat, Region, coats_of
from foredge.picture.colours import Colour, colour_of, mix

_IN_HOLLOWS, _ON_RIMS, _ON_HEIGHTS = 0.16, 0.1, 0.55
"""Shares of a flat face that a wash, a dry brush and a rubbed-on metal leave coloured."""


@dataclass(frozen=True, slots=True)
class Spot:
    """A colour on ``share`` of a surface."""

    colour: Colour
    share: float
    metal: bool = False


@dataclass(frozen=True, slots=True)
class Surface:
    """A surface as painted: ``base`` all over, ``hollows`` and ``rims`` where they catch,
    ``heights`` on its highest parts, ``specks`` strewn over it."""

    base: Colour
    hollows: Colour | None = None
    rims: Colour | None = None
    heights: Spot | None = None
    specks: tuple[Spot, ...] = ()
    metal: bool = False

    @property
    def flat(self) -> Colour:
        """The one colour it has where nothing stands up."""
        colour = self.base
        if self.hollows is not None:
            colour = mix(colour, self.hollows, _IN_HOLLOWS)
        if self.rims is not None:
            colour = mix(colour, self.rims, _ON_RIMS)
        if self.heights is not None:
            colour = mix(colour, self.heights.colour, self.heights.share)
        return colour


@dataclass(frozen=True, slots=True)
class Coats:
    """Every coat of a book with the share it covers (None: by its kind)."""

    coats: tuple[tuple[Coat, float | None], ...]

    def on(self, region: Region, bare: Colour) -> Surface:
        """``bare`` with every coat that lies on ``region``."""
        surface = Surface(bare)
        for coat, share in self.coats:
            if region in coat.regions:
                surface = _coated(surface, coat, share)
        return surface


def coats_on(book: Book) -> Coats:
    """The coats that the spec asks for, from below."""
    shares = [getattr(part.options, "share", None) for part in book.finishing]
    said = [share if share is None else float(share.value) for share in shares]
    return Coats(tuple(zip(coats_of(book), said, strict=True)))


def _coated(surface: Surface, coat: Coat, share: float | None) -> Surface:
    if coat.lies == "clear":
        return surface
    colour = colour_of(coat.stuff)
    match coat.lies:
        case "all" if share is None or share >= 0.99:
            return Surface(colour, metal=coat.metal)
        case "hollows":
            return replace(surface, hollows=colour)
        case "rims":
            return replace(surface, rims=colour)
        case "heights" if share is not None and share >= 0.99:
            return Surface(colour, metal=coat.metal)
        case "heights":
            spot = Spot(colour, _ON_HEIGHTS if share is None else share, coat.metal)
            return replace(surface, heights=spot)
    spot = Spot(colour, 0.08 if share is None else share)
    return replace(surface, specks=(*surface.specks, spot))
