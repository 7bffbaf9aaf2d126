"""Outlines for drawings: contours, sections, overhang, in mm."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from foredge.contract import (
    Cap,
    Frustum,
    Panel,
    Quantity,
    Ring,
    Rings,
    Slab,
    level_cuts,
    lost_under_skin,
    number,
    outline_of,
    overhang_of,
    reach,
    signed_area,
    top_of,
    upright_cut,
)
from unit.solids.shapes import SKIN, mm, shape

PANEL = Panel("front", mm(150, "width"), mm(220, "height"))
DOME = shape(Cap(mm(10), mm(10)), 40, 50)


def area(rings: Rings) -> float:
    return sum(signed_area(ring) for ring in rings)


def test_contours_of_a_dome() -> None:
    heights = (0.0, 4.0, 8.0, 11.0, 12.5)
    cuts = level_cuts((DOME,), SKIN, heights)
    assert [cut.height_mm for cut in cuts] == list(heights)
    for cut in cuts:
        want = math.pi * max(0.0, 144 - cut.height_mm**2)
        assert area(cut.rings) == pytest.approx(want, rel=0.02)
    xs = [x for ring in cuts[1].rings for x, _ in ring]
    assert (min(xs) + max(xs)) / 2 == pytest.approx(40)


@pytest.mark.parametrize("end", [(100.0, 50.0), (40.0, 130.0), (103.0, 133.0)])
def test_section_through_the_middle(end: tuple[float, float]) -> None:
    share = 60 / math.dist((40, 50), end)
    start = (40 - (end[0] - 40) * share, 50 - (end[1] - 50) * share)
    cut = upright_cut((DOME,), SKIN, start, end)
    core, clay, rigid = (dict(cut.bodies)[body] for body in ("core", "clay", "rigid"))
    assert cut.length_mm == pytest.approx(math.dist(start, end))
    assert area(core) == pytest.approx(math.pi * 100 / 2, rel=0.01)
    assert area(clay) == pytest.approx(math.pi * 44 / 2, rel=0.01)
    assert rigid == ()
    assert max(z for ring in clay for _, z in ring) == pytest.approx(12, abs=0.02)
    assert min(z for ring in clay for _, z in ring) == pytest.approx(0, abs=0.02)
    along = [x for ring in core for x, _ in ring]
    assert (min(along), max(along)) == pytest.approx((50, 70), abs=0.05)


def test_section_keeps_to_its_line() -> None:
    cut = upright_cut((DOME,), SKIN, (40, 50), (100, 50))
    assert area(dict(cut.bodies)["core"]) == pytest.approx(math.pi * 100 / 4, rel=0.01)
    assert upright_cut((DOME,), SKIN, (0, 0), (0, 0)).bodies[0][1] == ()


def test_overhang_is_told_with_its_skin() -> None:
    over = overhang_of(shape(Cap(mm(10), mm(10)), 5, 215), SKIN, PANEL)
    assert over.spine_mm == pytest.approx(7, abs=0.05)
    assert over.tail_mm == pytest.approx(7, abs=0.05)
    assert (over.fore_edge_mm, over.head_mm) == (0, 0)
    assert over.most_mm == pytest.approx(7, abs=0.05)
    assert overhang_of(DOME, SKIN, PANEL).most_mm == 0
    clay = replace(shape(Cap(mm(10), mm(10)), 5, 50), made="clay")
    assert overhang_of(clay, SKIN, PANEL).spine_mm == pytest.approx(5, abs=0.05)


def test_turned_and_mirrored_pieces_lie_where_they_should() -> None:
    corners = ((mm(0), mm(0)), (mm(30), mm(0)), (mm(30), mm(10)), (mm(0), mm(10)))
    flag = Slab(corners, mm(2), mm(0))
    for turn, mirrored, box in (
        (0, False, (50, 50, 80, 60)),
        (90, False, (40, 50, 50, 80)),
        (0, True, (20, 50, 50, 60)),
        (90, True, (40, 20, 50, 50)),
    ):
        made = replace(shape(flag, 50, 50, turn=turn, mirrored=mirrored), made="clay")
        (ring,) = outline_of(made, SKIN)
        xs, ys = zip(*ring, strict=True)
        assert (min(xs), min(ys), max(xs), max(ys)) == pytest.approx(box)
        x, y, radius = reach(made.pieces)
        assert (x, y) == pytest.approx(((box[0] + box[2]) / 2, (box[1] + box[3]) / 2))
        assert radius == pytest.approx(math.hypot(15, 5))


def test_a_raised_part_is_cut_at_its_own_foot() -> None:
    made = shape(Frustum(mm(5), mm(5), mm(4)), 20, 20, lift=6)
    assert top_of(made, SKIN) == pytest.approx(12)
    below, within = level_cuts((made,), SKIN, (3.0, 7.0))
    assert below.rings == ()
    assert area(within.rings) == pytest.approx(math.pi * 49, rel=0.01)


def test_a_skin_that_closes_a_ring_is_told() -> None:
    def ring(sweep: float) -> Ring[Quantity]:
        return Ring(mm(10), mm(14), mm(6), number(0), number(sweep), mm(0))

    (whole,), (part,) = shape(ring(360)).pieces, shape(ring(200)).pieces
    assert lost_under_skin(whole, SKIN) == ""
    words = "a skin of 3 mm closes the ring: its bare hole is 6 mm across"
    assert lost_under_skin(whole, mm(3, "skin")) == words
    assert lost_under_skin(part, mm(3, "skin")) == ""
    closed = level_cuts((shape(ring(360)),), mm(3.01, "skin"), (3.0,))[0].rings
    assert len(closed) == 1
