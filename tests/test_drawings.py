"""No words overlap or leave their page, in any drawing of any book from A7 to an A3 album."""

from __future__ import annotations

from pathlib import Path

import pytest

from drawn_books import EVERY, SIZES, Drawn, compiled
from foredge.drawing.textbox import overlaps
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.svg import marked

FIRST = "finished-book"


@pytest.mark.parametrize("drawn", EVERY, ids=str)
def test_no_words_overlap_or_leave_the_page(drawn: Drawn, tmp_path: Path) -> None:
    run = compiled(drawn, tmp_path)
    assert run.build is not None, [one.text for one in run.diagnostics]
    drawings = [marked(drawing) for drawing in all_drawings(run.build)]
    assert drawings[0].name == FIRST
    assert len(drawings) >= 9
    faults = {drawing.name: overlaps(drawing) for drawing in drawings}
    assert {name: found for name, found in faults.items() if found} == {}


def test_every_size_is_among_the_books() -> None:
    assert {drawn.size for drawn in EVERY} == set(SIZES)
