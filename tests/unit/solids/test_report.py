"""The report: names, bands, gates, what happens to too much of it."""

from __future__ import annotations

import math
import os
import pickle
import subprocess
import sys
from dataclasses import replace

import pytest

from foredge.contract import (
    RATIO,
    Cap,
    Frustum,
    Origin,
    Placed,
    Quantity,
    ReliefShape,
    Slab,
    SolidError,
    leaf,
    measure_solids,
)
from foredge.formula import formula
from foredge.quantity import band, gate
from unit.solids.shapes import SKIN, mm, shape

HALF_BALL = shape(Cap(mm(10), mm(10)), 40, 50)


def test_names_rules_and_sources() -> None:
    report = measure_solids((HALF_BALL,), SKIN, prefix="sculpt.front")
    names = [quantity.name for quantity in report.quantities()]
    assert len(set(names)) == len(names) == 20
    assert all(name and name.startswith("sculpt.front.") for name in names)
    assert all(q.rule and q.source and q.label for q in report.quantities())


def test_a_band_of_the_skin_reaches_the_clay_and_leaves_the_core() -> None:
    report = measure_solids((HALF_BALL,), SKIN, prefix="sculpt.front")
    assert band(report.core_volume).exact
    clay = band(report.skin_volume)
    low, middle, high = (2 / 3 * math.pi * ((10 + t) ** 3 - 1000) for t in (1.5, 2.0, 2.5))
    assert report.skin_volume.value == pytest.approx(middle, rel=1e-4)
    assert clay.low == pytest.approx(low, rel=0.01)
    assert clay.high == pytest.approx(high, rel=0.01)
    assert band(report.height).high == pytest.approx(12.5)


def test_centres_and_heights_stand_on_the_panel() -> None:
    lifted = shape(Frustum(mm(3), mm(3), mm(4)), 40, 50, lift=10)
    report = measure_solids((HALF_BALL, lifted), SKIN, prefix="sculpt.front")
    assert (report.skin_centre.x.value, report.skin_centre.y.value) == pytest.approx((40, 50))
    assert report.core_height.value == pytest.approx(14)
    assert report.height.value == pytest.approx(16)
    assert report.rigid_volume.value == 0
    assert report.rigid_centre.z.value == 0


def test_what_decided_the_form_is_recorded() -> None:
    width = gate(mm(150, "case.board.width"), None, "G2", "block.width", "block width")
    piece = replace(HALF_BALL.pieces[0], x=width / 2)
    report = measure_solids((ReliefShape((piece,)),), SKIN, prefix="sculpt.front")
    assert all(quantity.gates == {"G2"} for quantity in report.quantities())
    words = formula(report.skin_volume)
    assert "skin" in words.text
    assert "solids of the relief" in words.text
    deciders = formula(report.solids).deciders
    assert any(node.op == "gate" for node in deciders)
    assert {"size", "y", "turn", "lift"} <= {node.name for node in deciders}


def test_solid_clay_has_no_core_and_no_skin() -> None:
    solid = replace(HALF_BALL, made="clay")
    report = measure_solids((solid,), SKIN, prefix="sculpt.front")
    assert report.core_volume.value == 0
    assert report.skin_volume.value == pytest.approx(2 / 3 * math.pi * 1000, rel=1e-4)
    assert report.height.value == pytest.approx(10)
    assert band(report.skin_volume).exact


def test_an_inset_takes_what_the_clay_shrinks() -> None:
    inset = replace(shape(Frustum(mm(5), mm(5), mm(4))), made="rigid")
    shrinkage = leaf(0.05, RATIO, "shrinkage", Origin("spec"), low=0.02, high=0.08)
    report = measure_solids((inset,), SKIN, prefix="s", shrinkage=shrinkage)
    want = math.pi * (49 - (5 / 0.95) ** 2) * 2
    assert report.skin_volume.value == pytest.approx(want, rel=1e-4)
    assert report.rigid_volume.value == pytest.approx(math.pi * 100, rel=1e-4)
    full = measure_solids((inset,), SKIN, prefix="s", rim=leaf(1.0, RATIO, "rim", Origin("spec")))
    assert full.skin_volume.value == pytest.approx(math.pi * 24 * 4, rel=1e-4)


def test_nothing_at_all() -> None:
    report = measure_solids((), SKIN, prefix="sculpt.front")
    assert all(quantity.value == 0 for quantity in report.quantities())
    assert report.footprint == ()


def test_figures_travel_between_processes() -> None:
    report = measure_solids((HALF_BALL,), SKIN, prefix="sculpt.front")
    again: Quantity = pickle.loads(pickle.dumps(report.skin_volume))
    assert again.value == report.skin_volume.value
    assert band(again).high == band(report.skin_volume).high


def many(count: int) -> ReliefShape:
    piece = HALF_BALL.pieces[0]
    return ReliefShape(tuple(replace(piece, x=mm(float(place))) for place in range(count)))


def saw(teeth: int) -> ReliefShape:
    rim = [(mm(float(i)), mm(10.0 + i % 2)) for i in range(teeth)]
    outline = (*rim, (mm(float(teeth)), mm(0)), (mm(0), mm(0)))
    return shape(Slab(outline, mm(3), mm(0)))


@pytest.mark.parametrize(
    ("shapes", "skin", "words"),
    [
        ((many(401),), 2.0, "401 solids on one panel; at most 400"),
        ((saw(1100), saw(1100)), 2.0, "2204 corners and points"),
        ((HALF_BALL,), 0.0, "a skin of 0 mm"),
        ((HALF_BALL,), -1.0, "a skin of -1 mm"),
        ((shape(Cap(mm(-3), mm(2))),), 2.0, "its base radius must be above 0"),
        ((shape(Frustum(mm(0), mm(0), mm(2))),), 2.0, "not both 0"),
        ((shape(Cap(mm(math.nan), mm(2))),), 2.0, "one of its sizes comes to"),
        ((shape(Cap(mm(3), mm(2)), lift=-1),), 2.0, "below the board"),
    ],
)
def test_what_cannot_be_is_said(shapes: tuple[ReliefShape, ...], skin: float, words: str) -> None:
    with pytest.raises(SolidError, match=words):
        measure_solids(shapes, mm(skin, "skin"), prefix="sculpt.front")


SCRIPT = """
from unit.solids.shapes import SKIN, mm, shape
from foredge.contract import Cap, Frustum, Ring, measure_solids, number
shapes = [shape(Cap(mm(8 + i % 3), mm(6)), 7.0 * i, 5.0 * (i % 4)) for i in range(12)]
shapes.append(shape(Ring(mm(20), mm(6), mm(6), number(0), number(300), mm(2)), 40, 9, turn=11))
report = measure_solids(shapes, SKIN, prefix="s")
print([q.value.hex() for q in report.quantities()], report.footprint)
"""


def test_other_processes_find_the_same_to_the_last_bit() -> None:
    said = set()
    for seed in ("1", "2"):
        env = {**os.environ, "PYTHONHASHSEED": seed, "PYTHONPATH": os.pathsep.join(sys.path)}
        done = subprocess.run(
            [sys.executable, "-c", SCRIPT], env=env, capture_output=True, text=True, check=True
        )
        said.add(done.stdout)
    assert len(said) == 1


def test_the_contract_does_not_load_the_solid_library() -> None:
    env = {**os.environ, "PYTHONPATH": os.pathsep.join(sys.path)}
    script = (
        "import sys, foredge.contract, foredge_reliefs.scatter; print('manifold3d' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-c", script], env=env, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "False"


def test_equal_pieces_share_one_mesh() -> None:
    from foredge.solids.bodies import body

    body.cache_clear()
    pieces = tuple(Placed(Cap(mm(2), mm(2)), mm(5.0 * i), mm(0), SKIN * 0, mm(0)) for i in range(9))
    measure_solids((ReliefShape(pieces),), SKIN, prefix="s")
    assert body.cache_info().misses == 4  # bare and with its skin, coarse and fine
