"""Drawings of the case are drawn from the same numbers as its pieces."""

from __future__ import annotations

import math

import pytest

from case_books import CASE, book, finished_block
from foredge.contract import Drawing, Line, Measured, StageResult
from foredge_stages.case import PLUGIN


def run(case: str = CASE) -> tuple[StageResult, dict[str, Drawing]]:
    of = book(case)
    result = PLUGIN.run(of, finished_block(of))
    return result, {drawing.name: drawing for drawing in result.drawings}


def boxes(drawing: Drawing) -> list[tuple[float, float]]:
    sizes = []
    for item in drawing.items:
        if isinstance(item, Line) and item.closed:
            xs, ys = [x for x, _ in item.points], [y for _, y in item.points]
            sizes.append((max(xs) - min(xs), max(ys) - min(ys)))
    return sizes


def test_laid_open_shows_every_piece_at_its_size() -> None:
    result, drawings = run()
    found = boxes(drawings["case-laid-open"])
    for name in ("case.board", "case.spine", "case.covering"):
        piece = next(piece for piece in result.pieces if piece.name == name)
        assert any(
            size == pytest.approx((piece.width.value, piece.height.value)) for size in found
        ), name


def test_dimensions_measure_what_they_say() -> None:
    _, drawings = run()
    items = [item for item in drawings["case-laid-open"].items if isinstance(item, Measured)]
    assert len(items) >= 5
    for item in items:
        assert math.dist(item.start, item.end) == pytest.approx(
            float(item.text.split()[0]), abs=0.05
        )


def test_no_spine_piece_is_drawn_where_there_is_none() -> None:
    with_piece, without = run()[1], run(f"{CASE}  spine: {{use: none}}\n")[1]
    name = "case-laid-open"
    assert len(boxes(without[name])) == len(boxes(with_piece[name])) - 1


def test_mitre_clears_the_corner() -> None:
    result, drawings = run()
    clear = result.quantity("case.corner").value
    template = drawings["case-corner"]
    assert template.true_scale
    (cut,) = [item for item in template.items if isinstance(item, Line) and item.role == "cut"]
    (corner,) = [
        item.points[1]
        for item in template.items
        if isinstance(item, Line) and item.role == "outline"
    ]
    (x1, y1), (x2, y2) = cut.points
    distance = abs((x2 - x1) * (y1 - corner[1]) - (x1 - corner[0]) * (y2 - y1)) / math.dist(
        *cut.points
    )
    assert distance == pytest.approx(clear)
    assert abs(x2 - x1) == pytest.approx(abs(y2 - y1)), "45 degrees"


def test_folded_or_mitred_everything_lies_on_the_sheet() -> None:
    for case in (CASE, f"{CASE}  spine: {{use: none}}\n"):
        for drawing in run(case)[1].values():
            for item in drawing.items:
                for x, y in getattr(item, "points", ()):
                    assert 0 <= x <= drawing.width and 0 <= y <= drawing.height
