"""Super and lining are drawn as they lie on the spine."""

from __future__ import annotations

import pytest

from foredge.contract import Drawing, Line, StageResult
from foredge.drawing.textbox import overlaps
from text_block_books import made, value


def drawn(result: StageResult) -> Drawing:
    (drawing,) = (d for d in result.drawings if d.name == "text-block-spine-linings")
    assert drawing.true_scale and drawing.sizes
    return drawing


def box(drawing: Drawing, role: str) -> tuple[float, float, float, float]:
    (line,) = (i for i in drawing.items if isinstance(i, Line) and i.role == role and i.closed)
    xs, ys = [x for x, _ in line.points], [y for _, y in line.points]
    return min(xs), min(ys), max(xs), max(ys)


def test_super_and_lining_lie_on_one_middle_at_their_sizes() -> None:
    result = made()
    drawing = drawn(result)
    left, top, right, foot = box(drawing, "cut")
    assert right - left == pytest.approx(value(result, "super.width"))
    assert foot - top == pytest.approx(value(result, "super.height"))
    near, first, far, last = box(drawing, "hidden")
    assert far - near == pytest.approx(value(result, "lining.width"))
    assert last - first == pytest.approx(value(result, "lining.height"))
    assert left + right == pytest.approx(near + far)
    assert top + foot == pytest.approx(first + last)
    assert overlaps(drawing) == []


def test_nothing_is_drawn_of_what_is_not_there() -> None:
    bare = made(lining={"layers": 0})
    roles = {i.role for i in drawn(bare).items if isinstance(i, Line) and i.closed}
    assert roles == {"cut"}
