"""One face of the book painted, from its covering to its closure, in millimetres of its own."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

from foredge.contract import (
    Build,
    Item,
    Line,
    Look,
    Point,
    Raised,
    Region,
    Rings,
    Shape,
    Side,
    Stuff,
)
from foredge.picture.coats import Coats, Surface, coats_on
from foredge.picture.colours import FLAT, Colour, brightness, colour_of, find, lit, mix, written
from foredge.picture.place import Box, Ring
from foredge.picture.texture import textured

if TYPE_CHECKING:
    from foredge.picture.relief import Ground, Model

_LIGHT = 0.2
_MANY = 400
_HANGS_MM = 25.0
"""How far a bow may hang over the edge of what it is tied on."""

_ROUND_EDGE_MM = 700.0
_FALLEN_MM = 0.5
"""How far a strap throws its shadow."""


@dataclass(frozen=True)
class Faces:
    """Everything that is seen of a build; ``error`` (mm) is what no eye finds on the sheet."""

    build: Build
    error: float

    @cached_property
    def coats(self) -> Coats:
        """What its surfaces are painted with."""
        return coats_on(self.build.book)

    def looks(self, on: Side, layer: str) -> tuple[Look, ...]:
        """What lies on a face, from below."""
        return tuple(
            one
            for one in self.build.whole.looks
            if isinstance(one, Look) and one.on == on and one.layer == layer
        )

    def covering(self, on: Side) -> Stuff:
        """What the face is covered with, where nothing else lies on it."""
        return next((one.stuff for one in self.looks(on, "covering")), Stuff())

    def ground(self, on: Side, kind: str = "plain") -> Colour:
        """The colour of a face's covering with its coats."""
        return self.coats.on(Region(on, kind), colour_of(self.covering(on))).flat

    def joint(self) -> Colour:
        """The colour of the cloth in the joints."""
        return self.coats.on(Region("joint"), colour_of(self.covering("spine"))).flat

    @cached_property
    def models(self) -> dict[Side, Model]:
        """Every relief, lit. The solid library is loaded only where there is one."""
        raised = [one for one in self.build.whole.looks if isinstance(one, Raised)]
        if not raised:
            return {}
        from foredge.picture.relief import Model

        return {one.on: Model(one, self.error) for one in raised}

    def painted(self, on: Side, width: float, height: float) -> Iterator[Item]:
        """The face: covering, bevel, relief, pattern, letters; what lies round it comes last."""
        whole = Box(0.0, 0.0, width, height)
        grounds = self._grounds(on, whole)
        for stuff, colour, ring in grounds:
            yield Shape((ring,), colour=written(colour))
            yield from textured(stuff.texture, colour, ring, self.error)
        yield from _bevel(whole, self.ground(on))
        yield from self._relief(on, grounds)
        for look in self.looks(on, "pattern"):
            yield from self._pieces(look, whole, colour_of(look.stuff), 0.35)
        for look in self.looks(on, "letters"):
            yield from self._pieces(look, whole, self._letters(on, look), 0.0)

    def closure(self, on: Side, seen: Box) -> Iterator[Item]:
        """Strap, ribbon, clasp or button, as far as it is ``seen``."""
        for look in self.looks(on, "closure"):
            yield from self._pieces(look, seen, colour_of(look.stuff), _FALLEN_MM)

    def relief_colour(self, on: Side) -> Colour:
        """What a relief is seen as from the side."""
        return self._surface(on).flat

    def _surface(self, on: Side) -> Surface:
        bare = Stuff(row="clay")
        if self._fact(f"sculpt.made_on.{on}") == "bare-board":
            bare = self.covering(on)
        return self.coats.on(Region(on, "relief"), colour_of(bare))

    def _fact(self, name: str) -> str:
        return next((word for key, word in self.build.whole.facts if key == name), "")

    def _letters(self, on: Side, look: Look) -> Colour:
        """As the spec says; else dark on a light ground, gold on a dark one."""
        said = find(look.stuff.said)
        if said is None:
            light = brightness(self.ground(on)) > _LIGHT
            said = colour_of(Stuff(row="lamp" if light else "gold"))
        return self.coats.on(Region(on, "letters"), said).flat

    def _grounds(self, on: Side, whole: Box) -> list[tuple[Stuff, Colour, Ring]]:
        found: list[tuple[Stuff, Colour, Ring]] = []
        for look in self.looks(on, "covering") or (Look(on, "covering", Stuff(), ((),)),):
            colour = self.coats.on(Region(on), colour_of(look.stuff)).flat
            rings = [ring for piece in look.pieces for ring in piece] or [whole.ring]
            found += [(look.stuff, colour, cut) for ring in rings if (cut := whole.cut(ring))]
        return found

    def _relief(self, on: Side, grounds: Sequence[tuple[Stuff, Colour, Ring]]) -> Iterator[Item]:
        model = self.models.get(on)
        if model is None:
            return
        yield from model.shadow(_grounds(grounds))
        yield from model.painted(self._surface(on))

    def _pieces(self, look: Look, seen: Box, colour: Colour, fallen: float) -> Iterator[Item]:
        """Pieces with a dark edge and the shadow they throw; lines likewise."""
        if len(look.pieces) > _MANY:
            yield from _many(look, seen, colour)
            return
        edge, dark = written(lit(colour, 0.42)), "#2a2622"
        for piece in look.pieces:
            room = seen if _runs_on(piece) else seen.grown(_HANGS_MM)
            rings = tuple(cut for ring in piece if len(cut := room.cut(ring)) > 2)
            if not rings:
                continue
            if fallen:
                yield Line(_moved(rings[0], fallen), "fill", True, dark, 0.5)
            yield Shape(rings, colour=written(colour))
            yield from textured(look.stuff.texture, colour, rings[0], self.error)
            if fallen:
                yield from (Line(ring, "fill", True, edge, 0.22) for ring in rings)
        for points in look.lines:
            for run in seen.cut_line(points):
                if fallen:
                    yield Line(_moved(run, fallen), "fill", False, dark, look.width)
                yield Line(run, "fill", False, written(colour), look.width)
                if fallen:
                    shine = written(lit(colour, 0.9))
                    yield Line(_moved(run, -look.width / 5), "fill", False, shine, look.width / 4)


def _grounds(grounds: Sequence[tuple[Stuff, Colour, Ring]]) -> list[Ground]:
    from foredge.picture.relief import Ground

    return [Ground(colour, (ring,)) for _, colour, ring in grounds]


def _many(look: Look, seen: Box, colour: Colour) -> Iterator[Item]:
    """Pieces by the hundred: told apart by two tones, without edge or shadow."""
    tones = (written(colour), written(lit(colour, 0.86 * FLAT)))
    for place, piece in enumerate(look.pieces):
        rings = tuple(cut for ring in piece if len(cut := seen.cut(ring)) > 2)
        if rings:
            yield Shape(rings, colour=tones[place % 2])


def _runs_on(piece: Rings) -> bool:
    """Whether a piece goes round the edge of its face, where it is cut off."""
    return any(max(abs(x), abs(y)) > _ROUND_EDGE_MM for ring in piece for x, y in ring)


def _moved(ring: Ring, by: float) -> tuple[Point, ...]:
    return tuple((x + by, y + by) for x, y in ring)


def _bevel(box: Box, colour: Colour) -> Iterator[Item]:
    """The turned edges of a board: lit at the head and on the left, dark on the others."""
    left, top, right, foot = box.left, box.top, box.right, box.foot
    light, dark = lit(colour, 0.88), lit(colour, 0.5)
    inset = 0.45
    corner = (left + inset, foot - inset), (left + inset, top + inset), (right - inset, top + inset)
    far = (right - inset, top + inset), (right - inset, foot - inset), (left + inset, foot - inset)
    yield Line(far, "fill", colour=written(dark), width=0.9)
    yield Line(corner, "fill", colour=written(mix(colour, light, 0.8)), width=0.9)
