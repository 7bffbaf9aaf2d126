"""Volumes, areas and centres of single solids against the closed forms of the handbooks."""

from __future__ import annotations

import math

import pytest

from foredge.contract import Cap, Frustum, Mound, Ridge, Ring, Slab, Tube
from foredge.solids.figures import clay_figures, core_figures
from foredge.solids.whole import Clay
from unit.solids.shapes import relief

CLOSE = 1e-4
"""0.01 %: what the extrapolated figures keep."""


def near(value: float) -> object:
    return pytest.approx(value, rel=CLOSE)


@pytest.mark.parametrize(("base", "height"), [(20.0, 4.0), (10.0, 10.0), (6.0, 9.0)])
def test_cap(base: float, height: float) -> None:
    # Bronshtein & Semendyayev, Handbook of Mathematics, solids: spherical segment
    # (page from memory): V = pi h (3 a^2 + h^2) / 6, curved area pi (a^2 + h^2); the
    # centroid is 3 (2R - h)^2 / (4 (3R - h)) from the ball's middle.
    found = core_figures(relief(Cap(base, height)))
    radius = (base**2 + height**2) / (2 * height)
    assert found.volume == near(math.pi * height * (3 * base**2 + height**2) / 6)
    assert found.area == near(math.pi * (base**2 + height**2))
    assert found.base == near(math.pi * base**2)
    assert found.top == pytest.approx(height)
    from_middle = 3 * (2 * radius - height) ** 2 / (4 * (3 * radius - height))
    assert found.centre(2) == near(from_middle + height - radius)


def test_cone_and_frustum() -> None:
    # CRC Standard Mathematical Tables, mensuration (page from memory):
    # V = pi h (R^2 + R r + r^2) / 3, lateral area pi (R + r) s.
    cone, cut = (core_figures(relief(Frustum(10.0, top, 7.0))) for top in (0.0, 4.0))
    assert cone.volume == near(math.pi * 7 * 100 / 3)
    assert cone.area == near(math.pi * 10 * math.hypot(10, 7))
    assert cone.centre(2) == near(7 / 4)
    assert cut.volume == near(math.pi * 7 * (100 + 40 + 16) / 3)
    assert cut.area == near(math.pi * 14 * math.hypot(6, 7) + math.pi * 16)


def test_cylinder() -> None:
    # CRC Standard Mathematical Tables, mensuration (page from memory): V = pi r^2 h.
    found = core_figures(relief(Frustum(8.0, 8.0, 5.0)))
    assert found.volume == near(math.pi * 64 * 5)
    assert found.area == near(2 * math.pi * 8 * 5 + math.pi * 64)


def test_half_ellipsoid() -> None:
    # CRC Standard Mathematical Tables, mensuration (page from memory): V = 4/3 pi a b c.
    found = core_figures(relief(Mound(10.0, 6.0, 5.0)))
    assert found.volume == near(2 / 3 * math.pi * 300)
    assert found.centre(2) == near(3 / 8 * 5)


def test_torus_by_pappus() -> None:
    # The theorems of Pappus and Guldin, Bronshtein & Semendyayev (page from memory):
    # area (volume) of the line (section) times the way of its centroid.
    found = core_figures(relief(Ring(20.0, 6.0, 6.0, 0.0, 360.0, 0.0)))
    assert found.volume == near(2 * math.pi**2 * 20 * 9)
    assert found.area == near(4 * math.pi**2 * 20 * 3)


@pytest.mark.parametrize(("start", "sweep"), [(0.0, 360.0), (30.0, 100.0), (-45.0, 270.0)])
def test_half_round_arc_by_pappus(start: float, sweep: float) -> None:
    # The same theorem for half an ellipse of semi-axes 3 and 4 led round part of a circle.
    found = core_figures(relief(Ring(20.0, 6.0, 8.0, start, sweep, 4.0)))
    assert found.volume == near(sweep / 360 * 2 * math.pi * 20 * (math.pi * 3 * 4 / 2))
    middle = math.radians(start + sweep / 2)
    if sweep < 360:
        assert math.atan2(found.centre(1), found.centre(0)) == pytest.approx(middle, abs=1e-6)


@pytest.mark.parametrize("end", [(10.0, 5.0, 12.0), (0.0, 0.0, 20.0), (-13.0, 0.5, 9.0)])
def test_capsule(end: tuple[float, float, float]) -> None:
    # A ball and a cylinder together; CRC Standard Mathematical Tables (page from memory).
    found = core_figures(relief(Tube(((0.0, 0.0, 9.0), end), (2.0, 2.0))))
    length = math.dist((0.0, 0.0, 9.0), end)
    assert found.volume == near(4 / 3 * math.pi * 8 + math.pi * 4 * length)
    assert found.area == near(16 * math.pi + 4 * math.pi * length)


def test_prism_and_bevelled_plate() -> None:
    # The prismoidal formula h (A0 + 4 Am + A1) / 6; CRC Standard Mathematical Tables (page
    # from memory).
    corners = ((0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0))
    sharp, bevelled = (core_figures(relief(Slab(corners, 3.0, bevel))) for bevel in (0.0, 1.0))
    assert sharp.volume == pytest.approx(600.0)
    assert sharp.area == pytest.approx(200.0 + 60 * 3)
    assert bevelled.volume == near(200 * 2 + (10 * 20 + 4 * 9 * 19 + 8 * 18) / 6)
    assert bevelled.area == near(60 * 2 + 8 * 18 + (60 + 52) / 2 * math.sqrt(2))


def test_fin() -> None:
    # A triangular prism, CRC Standard Mathematical Tables (page from memory).
    found = core_figures(relief(Ridge(20.0, 6.0, 5.0)))
    assert found.volume == pytest.approx(20 * 6 * 5 / 2)
    assert found.area == pytest.approx(2 * 20 * math.hypot(3, 5) + 6 * 5)


STEINER = """
R. Schneider, Convex Bodies: The Brunn-Minkowski Theory, 2nd ed. 2014, section 4.2 (from memory):
all points within t of a convex body have the volume V + S t + W t^2 + 4/3 pi t^3, where for a
polytope W is half the sum of edge length times the angle between the normals beside it. A
body and its image below the board are such a convex body; half of it is what grows above.
"""


def grown(volume: float, area: float, edges: float, t: float) -> float:
    """The Steiner formula for the doubled body, halved, less the core."""
    return (area * t + edges * t**2 + 4 / 3 * math.pi * t**3) / 2


@pytest.mark.parametrize("t", [0.5, 2.0, 5.0])
def test_skin_of_a_plate(t: float) -> None:
    corners = ((0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0))
    found = clay_figures(relief(Slab(corners, 3.0, 0.0)), Clay(t))
    # The doubled box is 10 x 20 x 6; its 12 edges turn by a right angle: W = pi (a + b + c).
    want = grown(1200.0, 2 * (200 + 60 + 120), math.pi * (10 + 20 + 6), t)
    assert found.volume == near(want)


@pytest.mark.parametrize("t", [0.5, 2.0, 5.0])
def test_skin_of_a_disc(t: float) -> None:
    found = clay_figures(relief(Frustum(10.0, 10.0, 6.0)), Clay(t))
    # The doubled cylinder: S = 2 pi r^2 + 2 pi r h, W = pi h + pi^2 r (h = 12).
    area = 2 * math.pi * 100 + 2 * math.pi * 10 * 12
    assert found.volume == near(grown(0.0, area, math.pi * 12 + math.pi**2 * 10, t))


@pytest.mark.parametrize("t", [0.5, 2.0])
def test_skin_of_a_fin(t: float) -> None:
    found = clay_figures(relief(Ridge(20.0, 6.0, 5.0)), Clay(t))
    # The doubled fin is a rhombic prism, diagonals 6 and 10. Every convex section turns by
    # 2 pi in all: W = pi (half the rhomb's rim + length).
    side = math.hypot(3, 5)
    area = 4 * side * 20 + 2 * 30
    assert found.volume == near(grown(0.0, area, math.pi * (20 + 2 * side), t))


def test_skin_of_a_half_ball() -> None:
    found = clay_figures(relief(Cap(10.0, 10.0)), Clay(2.0))
    assert found.volume == near(2 / 3 * math.pi * (12**3 - 10**3))
    assert found.area == near(2 * math.pi * 144)


@pytest.mark.parametrize("t", [0.5, 2.0])
def test_skin_of_a_flat_dome(t: float) -> None:
    # By Pappus and Guldin: the sector of thickness t beside the arc and the fan about the rim.
    base, height = 20.0, 4.0
    radius = (base**2 + height**2) / (2 * height)
    lean = math.atan2(radius - height, base)
    shell = 2 / 3 * math.pi * ((radius + t) ** 3 - radius**3) * (1 - math.sin(lean))
    fan = lean * t**2 / 2
    off = base + 2 * t * math.sin(lean) / (3 * lean)
    found = clay_figures(relief(Cap(base, height)), Clay(t))
    assert found.volume == near(shell + 2 * math.pi * off * fan)


@pytest.mark.parametrize("count", [1, 12, 40, 140, 160])
def test_every_level_of_detail_keeps_the_figures(count: int) -> None:
    # More parts are drawn with fewer chords (128 to 32 a turn). Closed forms as above.
    corners = ((0.0, 0.0), (10.0, 0.0), (10.0, 20.0), (0.0, 20.0))
    want = {
        Cap(10.0, 10.0): 2 / 3 * math.pi * (12**3 - 10**3),
        Slab(corners, 3.0, 0.0): grown(1200.0, 760.0, math.pi * 36, 2.0),
        Frustum(10.0, 10.0, 6.0): grown(0.0, 440 * math.pi, math.pi * 12 + math.pi**2 * 10, 2.0),
    }
    for solid, volume in want.items():
        found = clay_figures(relief(*[solid] * count, apart=30.0), Clay(2.0))
        assert found.volume == pytest.approx(count * volume, rel=5e-4 if count > 146 else CLOSE)
