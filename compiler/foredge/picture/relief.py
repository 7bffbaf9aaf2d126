"""A relief painted: bands of one tone each, cut to its outline, over the shadow it throws."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from typing import cast

import numpy as np
from contourpy import FillType, contour_generator
from manifold3d import CrossSection, FillRule
from numpy.typing import NDArray

from foredge.contract import Item, Point, Raised, Rings, Shape
from foredge.picture.coats import Surface
from foredge.picture.colours import FLAT, Colour, lit, mix, written
from foredge.picture.light import Light, blurred, light_on
from foredge.solids.heights import Heights, Numbers, heights_of

Offsets = NDArray[np.uint32]
TONES = 14
FINEST_MM = 0.3
_SHADOWS = ((0.25, 0.84), (0.6, 0.68))
"""From so much shade on, the ground is seen with so much of its tone."""

_SPECK_MM = 0.7
_MOST_SPECKS = 900


@dataclass(frozen=True, slots=True)
class Ground:
    """A part of the face under the relief: its colour, its rings (mm)."""

    colour: Colour
    rings: Rings


@dataclass(frozen=True, slots=True)
class Profile:
    """The relief from the side: at each ``y`` (mm) how high it stands there."""

    heights: tuple[Point, ...]


class Model:
    """One relief on its grid, lit; ``error`` is how far (mm) a drawn edge may stray."""

    def __init__(self, raised: Raised, error: float) -> None:
        self.heights: Heights = heights_of(raised.shapes, raised.skin, FINEST_MM)
        self.light: Light = light_on(self.heights)
        self.error = error
        rings = [np.asarray(ring) for ring in self.heights.outline]
        self.outline = CrossSection(rings, FillRule.EvenOdd)

    def shadow(self, grounds: Sequence[Ground]) -> Iterator[Item]:
        """What falls on the ground beside it."""
        for least, share in _SHADOWS:
            fallen = self._over(self.light.shade, least) - self.outline
            for ground in grounds:
                area = CrossSection([np.asarray(r) for r in ground.rings], FillRule.EvenOdd)
                yield from self._shapes(fallen ^ area, lit(ground.colour, FLAT * share))

    def painted(self, surface: Surface) -> Iterator[Item]:
        """The relief itself: the whole, then its highest parts where they are another colour."""
        yield from self._bands(self.outline, surface.base, surface, metal=surface.metal)
        spot = surface.heights
        if spot is not None:
            zone = self._heights(spot.share) ^ self.outline
            yield from self._bands(zone, spot.colour, Surface(spot.colour), metal=spot.metal)
        for place, one in enumerate(surface.specks):
            yield from self._specks(one.colour, one.share, place)

    def profile(self, height: float) -> Profile:
        """Its silhouette from the spine or the fore-edge, within a face ``height`` mm high."""
        top, step = self.heights.top, self.heights.step
        rows = self.heights.z.max(axis=1)
        found = [(top + place * step, float(high)) for place, high in enumerate(rows)]
        return Profile(tuple((y, high) for y, high in found if 0 <= y <= height))

    def _bands(
        self, zone: CrossSection, base: Colour, surface: Surface, *, metal: bool
    ) -> Iterator[Item]:
        tone = self.light.tone
        if metal:
            tone = np.clip(FLAT + (tone - FLAT) * 1.25, 0, 1)
        tone = tone - (0.12 * self.light.hollow if surface.hollows is not None else 0.0)
        tone = np.clip(tone + (0.16 * self.light.rim if surface.rims is not None else 0.0), 0, 1)
        yield from self._shapes(zone, self._colour(base, 0.5 / TONES, surface, metal))
        for place in range(1, TONES):
            area = self._over(tone, place / TONES) ^ zone
            colour = self._colour(base, (place + 0.5) / TONES, surface, metal)
            yield from self._shapes(area, colour)

    def _colour(self, base: Colour, tone: float, surface: Surface, metal: bool) -> Colour:
        if surface.hollows is not None and tone < FLAT:
            base = mix(base, surface.hollows, 0.75 * (FLAT - tone) / FLAT)
        if surface.rims is not None and tone > FLAT - 0.06:
            base = mix(base, surface.rims, min(0.7, 2.2 * (tone - FLAT + 0.06)))
        return lit(base, tone, metal=metal)

    def _heights(self, share: float) -> CrossSection:
        """The highest ``share`` of it, seen from above."""
        z = blurred(self.heights.z, 0.5 / self.heights.step)
        standing = np.sort(z[z > 0.3])
        if not standing.size:
            return CrossSection()
        least = standing[int((1 - max(0.0, min(1.0, share))) * (standing.size - 1))]
        return self._over(z, float(least))

    def _over(self, field: Numbers, least: float) -> CrossSection:
        """Where ``field`` is more than ``least``."""
        heights = self.heights
        rows, columns = field.shape
        generator = contour_generator(
            heights.left + heights.step * np.arange(columns),
            heights.top + heights.step * np.arange(rows),
            field,
            name="serial",
            fill_type=FillType.OuterOffset,
        )
        found = cast("tuple[list[Numbers], list[Offsets]]", generator.filled(least, np.inf))
        rings = [
            points[start:end]
            for points, ends in zip(*found, strict=True)
            for start, end in pairwise(ends.tolist())
        ]
        return CrossSection(rings, FillRule.EvenOdd) if rings else CrossSection()

    def _shapes(self, area: CrossSection, colour: Colour) -> Iterator[Item]:
        if area.is_empty():
            return
        polygons = area.simplify(self.error).to_polygons()
        rings = tuple(tuple((float(x), float(y)) for x, y in ring) for ring in polygons)
        if rings:
            yield Shape(rings, colour=written(colour))

    def _specks(self, colour: Colour, share: float, seed: int) -> Iterator[Item]:
        """Grains strewn over it, always the same ones."""
        area = float(self.outline.area())
        count = min(_MOST_SPECKS, int(share * area / (_SPECK_MM * _SPECK_MM)))
        random = np.random.default_rng(seed)
        left, top, right, foot = self.outline.bounds()
        x, y = random.uniform(left, right, count), random.uniform(top, foot, count)
        size = _SPECK_MM * random.uniform(0.4, 1.0, count)
        z, step = self.heights.z, self.heights.step
        column = ((x - self.heights.left) / step).astype(int)
        row = ((y - self.heights.top) / step).astype(int)
        kept = z[row, column] > 0.2
        grains = tuple(
            _grain(float(a), float(b), float(c) / 2)
            for a, b, c in zip(x[kept], y[kept], size[kept], strict=True)
        )
        if grains:
            yield Shape(grains, colour=written(mix(colour, (1.0, 1.0, 1.0), 0.25)))


def _grain(x: float, y: float, half: float) -> tuple[Point, ...]:
    return (x, y - half), (x + half, y), (x, y + half), (x - half, y)
