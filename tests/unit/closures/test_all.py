"""What every closure keeps: the contract, its place in the order, no number before its gate."""

from __future__ import annotations

import pytest

from closure_books import fastened, job
from foredge.contract import BEFORE_PASTE_DOWNS, Circle, Drawing, Line
from foredge.plan.order import order
from foredge.registry import collect
from foredge.testing import check_plugin, check_result

CLOSURES = {
    "wrap-strap": "{use: wrap-strap}",
    "ribbon-tie": "{use: ribbon-tie, pairs: 2}",
    "elastic": "{use: elastic}",
    "button-loop": "{use: button-loop, button: 18 mm}",
    "clasp": "{use: clasp, plate_width: 14 mm, plate_height: 20 mm, count: 2}",
    "magnets": "{use: magnets, diameter: 8 mm, thickness: 1 mm, count: 2}",
}
ALL = pytest.mark.parametrize("closure", CLOSURES.values(), ids=CLOSURES)
MADE_ON = ("bare-board", "covered-case", "finished-book")


def test_every_closure_is_tested_here() -> None:
    registry, _ = collect(entry_points=False)
    assert set(registry.names("closure")) == set(CLOSURES)


@ALL
def test_contract(closure: str) -> None:
    check_plugin(job(closure).part.plugin)


@ALL
@pytest.mark.parametrize("made_on", ["", *MADE_ON])
def test_its_result_explains_itself(closure: str, made_on: str) -> None:
    result = fastened(closure, relief=12.0 if made_on else 0.0, made_on=made_on)
    check_result(result.work)
    assert result.work.problems == ()
    names = [operation.id for operation in result.work.operations]
    assert result.done == names[-1]
    assert all(name.startswith("finishing.") and name.endswith("-closure") for name in names)
    made = {piece.name for piece in result.work.pieces}
    assert made == {name for one in result.work.operations for name in one.pieces}


@ALL
def test_what_is_anchored_inside_comes_before_the_paste_downs(closure: str) -> None:
    """An invariant of the order: nothing but a done: can break it."""
    for one in fastened(closure).work.operations:
        if one.id in ("finishing.set-closure", "finishing.sink-closure"):
            assert set(BEFORE_PASTE_DOWNS) <= set(one.before_any)
        else:
            assert {"case.press", "finishing.varnish"} <= set(one.after)


@ALL
@pytest.mark.parametrize("made_on", MADE_ON)
def test_no_step_uses_the_relief_before_it_can_be_measured(closure: str, made_on: str) -> None:
    result = fastened(closure, relief=12.0, made_on=made_on)
    pieces = {piece.name: piece for piece in result.work.pieces}
    for one in result.work.operations:
        numbers = [q for step in one.steps for q in step.quantities()]
        numbers += [use.amount for use in one.uses]
        numbers += [q for name in one.pieces for q in (pieces[name].width, pieces[name].height)]
        if any("G3" in q.gates for q in numbers):
            assert "G3" in one.stops_for and "sculpt.dry" in one.after


@ALL
def test_cut_before_the_relief_means_long_enough(closure: str) -> None:
    """The blank is longer than what is fitted, whatever the relief comes to within its band."""
    result = fastened(closure, relief=12.0, made_on="finished-book")
    for piece in result.work.pieces:
        if piece.blank:
            length = result.work.quantity("finishing.closure.length")
            assert piece.height.value > length.value + 40 and piece.height.gates == frozenset()


@ALL
def test_drawings_are_at_full_size_and_hold_the_board(closure: str) -> None:
    for sheet in fastened(closure).work.drawings:
        assert sheet.true_scale
        board = next(i for i in sheet.items if isinstance(i, Line) and i.closed)
        xs, ys = zip(*board.points, strict=True)
        assert (max(xs) - min(xs), max(ys) - min(ys)) == pytest.approx((148.0, 213.0))


def holes(sheet: Drawing) -> list[tuple[float, float]]:
    return [item.centre for item in sheet.items if isinstance(item, Circle)]


def test_the_same_hole_lies_at_the_fore_edge_on_every_sheet() -> None:
    """Inside of the front: fore-edge on the left. Inside of the back: on the right."""
    result = fastened("{use: button-loop, button: 18 mm, button_from_fore_edge: 22 mm}")
    front, back = result.work.drawings
    left = (front.width - 148) / 2
    assert all(x - left == pytest.approx(22) for x, _ in holes(front)) and len(holes(front)) == 2
    assert all(left + 148 - x == pytest.approx(12) for x, _ in holes(back))
    magnets = fastened(CLOSURES["magnets"]).work.drawings[0]
    left = (magnets.width - 148) / 2
    assert all(left + 148 - x == pytest.approx(20) for x, _ in holes(magnets))
    assert [y - 15 for _, y in holes(magnets)] == pytest.approx([71, 142])


@ALL
def test_a_cycle_is_never_made_with_case_and_sculpt(closure: str) -> None:
    for made_on in MADE_ON:
        work = fastened(closure, relief=12.0, made_on=made_on).work
        (known, problems) = order(work.operations, ("finishing",))
        assert len(known) == len(work.operations)
        assert not [p for p in problems if p.rule == "operation-cycle"]
