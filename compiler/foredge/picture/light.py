"""Light and shadow on a grid of heights: the tone of every point, the shadow it throws.

Tone is the cosine of the angle between light and surface, as in shaded relief on maps
(E. Imhof, Cartographic Relief Presentation, 1982, chapter 9; from memory). The light comes from
the upper left, 46 degrees above the board, so that a level face has the tone of its own colour.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from foredge.picture.colours import FLAT
from foredge.solids.heights import Heights, Numbers

RISE = math.tan(math.asin(FLAT))
"""How much the light falls over one mm of its way, seen from above."""

_HOLLOW_MM, _RIM_MM = 3.0, 1.2


@dataclass(frozen=True, slots=True)
class Light:
    """``tone`` 0 to 1; ``shade`` 1 in a cast shadow, 0 in the light; ``hollow`` and ``rim``
    0 to 1, how deep a point lies below what is round it, and how far it stands above."""

    tone: Numbers
    shade: Numbers
    hollow: Numbers
    rim: Numbers


def light_on(heights: Heights) -> Light:
    """How the relief is lit."""
    z, step = heights.z, heights.step
    smooth = blurred(z, 0.35 / step)
    down, across = np.gradient(smooth, step)
    level = math.sqrt((1 - FLAT * FLAT) / 2)
    # Towards the light is left and up: against both axes.
    tone = (across * level + down * level + FLAT) / np.sqrt(across**2 + down**2 + 1)
    shade = blurred(_cast(z, step), 0.5 / step)
    wide = blurred(z, _HOLLOW_MM / step)
    near = blurred(z, _RIM_MM / step)
    scale = max(1.0, 0.25 * float(z.max()))
    hollow = np.clip((wide - z) / scale, 0, 1)
    rim = np.clip((near - z) / -scale * 2.2, 0, 1)
    on_it = np.clip(tone, 0, 1) * (1 - 0.42 * shade) * (1 - 0.22 * hollow)
    return Light(np.clip(on_it, 0, 1), shade, hollow, rim)


def _cast(z: Numbers, step: float) -> Numbers:
    """1 where something to the upper left stands in the light."""
    shade = np.zeros_like(z)
    fall = step * math.sqrt(2) * RISE
    reach = min(int(z.max() / fall) + 1, min(z.shape) - 1)
    for far in range(1, reach + 1):
        above = z[:-far, :-far] - far * fall
        below = z[far:, far:]
        shade[far:, far:] = np.maximum(shade[far:, far:], above > below + 0.05)
    return shade


def blurred(z: Numbers, radius: float) -> Numbers:
    """``z`` smoothed by three box means, close to a Gaussian of that standard deviation."""
    cells = max(0, round((math.sqrt(4 * radius * radius + 1) - 1) / 2))
    for _ in range(3 if cells else 0):
        z = _box(_box(z, cells).T, cells).T
    return z


def _box(z: Numbers, cells: int) -> Numbers:
    """Means over ``2 * cells + 1`` rows, the edge rows repeated."""
    padded = np.pad(z, ((cells + 1, cells), (0, 0)), mode="edge")
    sums = np.cumsum(padded, axis=0)
    means: Numbers = (sums[2 * cells + 1 :] - sums[: -2 * cells - 1]) / (2 * cells + 1)
    return means
