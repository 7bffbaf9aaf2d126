"""Whatever sizes a maker writes: a problem or a body, never a crash and never nothing."""

from __future__ import annotations

import math

from hypothesis import given, settings, strategies as st

from foredge.contract import measure_solids
from unit.reliefs.forms import make
from unit.solids.shapes import SKIN

FEW = settings(max_examples=20, deadline=None, derandomize=True)
SIZES = st.floats(0.5, 60).map(lambda mm: f"{mm:.2f} mm")
ANGLES = st.integers(0, 400).map(lambda deg: f"{deg} deg")


def holds_up(part: str) -> None:
    result = make(part)
    if result.shape is None:
        assert result.problems
        return
    report = measure_solids((result.shape,), SKIN, prefix="sculpt.front")
    assert report.skin_volume.value > 0
    assert report.core_volume.value > 0
    assert report.height.value > report.core_height.value > 0
    assert report.footprint_area.value >= 0.999 * report.base_area.value
    assert all(math.isfinite(quantity.value) for quantity in report.quantities())


@FEW
@given(SIZES, SIZES, SIZES, ANGLES, ANGLES)
def test_horns(diameter: str, length: str, tip: str, rise: str, bend: str) -> None:
    holds_up(
        f"{{use: horn, diameter: {diameter}, length: {length}, tip: {tip}, rise: {rise}, "
        f"bend: {bend}}}"
    )


@FEW
@given(SIZES, SIZES, SIZES, ANGLES, ANGLES, st.sampled_from(["round", "half-round"]))
def test_arcs(d: str, width: str, height: str, start: str, sweep: str, section: str) -> None:
    holds_up(
        f"{{use: arc, diameter: {d}, width: {width}, height: {height}, start: {start}, "
        f"sweep: {sweep}, section: {section}}}"
    )


@FEW
@given(
    st.lists(st.tuples(st.integers(0, 40), st.integers(0, 40)), min_size=3, max_size=7),
    SIZES,
    st.sampled_from(["0 mm", "0.5 mm", "2 mm"]),
)
def test_plates(corners: list[tuple[int, int]], thickness: str, bevel: str) -> None:
    points = ", ".join(f"[{x} mm, {y} mm]" for x, y in corners)
    holds_up(f"{{use: plate, points: [{points}], thickness: {thickness}, bevel: {bevel}}}")


@settings(FEW, max_examples=8)
@given(st.lists(st.tuples(*[st.integers(0, 40)] * 3, st.integers(1, 20)), min_size=2, max_size=5))
def test_tubes(points: list[tuple[int, int, int, int]]) -> None:
    said = ", ".join(
        f"{{x: {x} mm, y: {y} mm, height: {z} mm, diameter: {d} mm}}" for x, y, z, d in points
    )
    holds_up(f"{{use: tube, points: [{said}]}}")


@FEW
@given(SIZES, SIZES, SIZES, SIZES, st.integers(1, 60), st.integers(0, 9))
def test_scatters(d: str, height: str, wide: str, high: str, count: int, seed: int) -> None:
    holds_up(
        f"{{use: scatter, of: {{use: dome, diameter: {d}, height: {height}}}, count: {count}, "
        f"width: {wide}, height: {high}, region: ellipse, seed: {seed}}}"
    )
