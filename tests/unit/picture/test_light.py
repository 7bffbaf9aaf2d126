"""Light and shadow on a grid of heights."""

from __future__ import annotations

import math

import numpy as np
import pytest

from foredge.picture.colours import FLAT
from foredge.picture.light import RISE, blurred, light_on
from foredge.solids.heights import Heights

STEP = 0.5


def on(z: np.ndarray) -> Heights:
    return Heights(0.0, 0.0, STEP, z, ())


def slope(across: float, down: float) -> float:
    """The tone in the middle of a plane that rises so much a mm."""
    rows, columns = np.mgrid[0:40, 0:40] * STEP
    return float(light_on(on(across * columns + down * rows + 30.0)).tone[20, 20])


def test_level_ground_has_the_tone_of_its_colour() -> None:
    assert light_on(on(np.zeros((30, 30)))).tone == pytest.approx(np.full((30, 30), FLAT))


def test_a_plane_is_lit_by_the_cosine_of_its_angle() -> None:
    level = math.sqrt((1 - FLAT**2) / 2)
    expected = (0.3 * level + 0.2 * level + FLAT) / math.sqrt(0.3**2 + 0.2**2 + 1)
    assert slope(0.3, 0.2) == pytest.approx(expected, abs=0.02)


def test_what_faces_the_upper_left_is_brighter() -> None:
    assert slope(0.4, 0.4) > slope(0.4, -0.4) > slope(-0.4, -0.4)
    assert slope(0.4, -0.4) == pytest.approx(slope(-0.4, 0.4), abs=0.02)


def test_a_post_throws_a_shadow_as_long_as_the_light_is_low() -> None:
    z = np.zeros((120, 120))
    z[20:24, 20:24] = 12.0
    shade = light_on(on(z)).shade
    diagonal = [shade[24 + n, 24 + n] for n in range(60)]
    length = sum(one > 0.5 for one in diagonal) * STEP * math.sqrt(2)
    assert length == pytest.approx(12.0 / RISE, abs=1.6)
    assert shade[10, 10] == 0


def test_a_blur_keeps_the_sum_and_spreads_by_its_radius() -> None:
    z = np.zeros((81, 81))
    z[40, 40] = 1.0
    soft = blurred(z, 4.0)
    assert soft.sum() == pytest.approx(1.0)
    rows = np.arange(81) - 40
    assert math.sqrt((soft.sum(axis=1) * rows**2).sum()) == pytest.approx(4.0, abs=0.5)
