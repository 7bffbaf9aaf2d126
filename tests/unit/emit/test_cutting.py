"""The cutting plan in words and as pictures."""

from __future__ import annotations

import pytest

from demo import DEMOS, Run, compiled
from foredge.contract import Label, Line, Shape
from foredge.drawing.textbox import overlaps
from foredge.emit.cutting import CutLine, cut_views, room_for
from foredge.emit.cutting_drawings import cut_drawings

SALTMARSH = Run("saltmarsh-tide-book.yaml")
CLOCKMAKERS = Run("clockmakers-daybook.yaml")
each_demo = pytest.mark.parametrize("run", DEMOS, ids=str)


def test_a_sheet_is_told_cut_by_cut() -> None:
    view = cut_views(compiled(SALTMARSH))[0]
    assert view.title == "chart-paper, sheets 1 to 20, all alike"
    assert view.gives == "2 × Folio"
    assert [(line.number, line.text) for line in view.lines] == [
        ("1", "The whole sheet: cut across, 307 mm from its head. Lower: off-cut A."),
        (
            "2 to 3",
            "The upper part of the last cut: cut down twice, each time 209 mm from its left. "
            "Each part: folio. Beyond: waste.",
        ),
    ]


def test_a_grid_is_two_lines() -> None:
    views = {view.title: view for view in cut_views(compiled(CLOCKMAKERS))}
    _, columns, rows = views["end-sheets, off-cut 1A"].lines
    assert columns.number == "2 to 9"
    assert "cut down 8 times, each time ≈ 24 mm from its left. Beyond: waste." in columns.text
    assert (rows.number, rows.text) == (
        "10 to 57",
        "Each of the 8 strips of the last cuts: cut across 6 times, each time ≈ 24 mm from its "
        "head. Each part, the last too: tile.",
    )


def test_an_off_cut_that_is_used_later_says_for_what() -> None:
    views = {view.title: view for view in cut_views(compiled(SALTMARSH))}
    left = views["wrapping-kraft, sheet 1"].left
    letter, _, told = left[-1].partition(": ")
    assert told == "500 × 421 mm, cut up later for the spine piece"
    later = views[f"wrapping-kraft, off-cut 1{letter}"]
    assert later.state == "provisional (G1, G2): do not cut yet"
    assert "≈ 16.5 mm" in later.lines[0].text


def test_left_overs_are_offered_for_pieces_the_maker_finds_stuff_for() -> None:
    build = compiled(SALTMARSH)
    offered = {piece.name: name for name, pieces in room_for(build).items() for piece in pieces}
    assert offered["case.spacer"].startswith("tea-cartons")
    sizes = {
        sheet.name + off.name: (off.width, off.height)
        for sheet in build.plan.cutting.sheets
        for off in sheet.layout.off_cuts
    }
    pieces = {piece.name: piece for piece in build.whole.pieces}
    for piece, name in offered.items():
        room = sorted(sizes[name])
        asked = sorted((pieces[piece].width.value, pieces[piece].height.value))
        assert asked[0] <= room[0] and asked[1] <= room[1]


def _told(line: CutLine) -> int:
    """How many cuts a line tells."""
    first, _, last = line.number.partition(" to ")
    return int(last or first) - int(first) + 1


@each_demo
def test_every_cut_of_a_sheet_is_told_and_numbered(run: Run) -> None:
    build = compiled(run)
    views = cut_views(build)
    for sheet, view, drawing in zip(
        build.plan.cutting.sheets, views, cut_drawings(build), strict=True
    ):
        assert sum(_told(line) for line in view.lines) == len(sheet.layout.cuts)
        assert drawing.name == view.key
        numbers = [
            item.text for item in drawing.items if isinstance(item, Label) and item.role == "cut"
        ]
        assert numbers == [str(cut.order) for cut in sheet.layout.cuts]
        assert sum(isinstance(item, Shape) for item in drawing.items) == len(
            sheet.layout.placements
        )


@each_demo
def test_a_picture_is_provisional_where_the_words_are(run: Run) -> None:
    """Also where only the number of pieces waits for a gate, as with a row of tiles."""
    build = compiled(run)
    for sheet, drawing in zip(build.plan.cutting.sheets, cut_drawings(build), strict=True):
        assert {gate for size in drawing.sizes for gate in size.gates} == set(sheet.gates)


@each_demo
def test_pictures_of_sheets_can_be_read(run: Run) -> None:
    for drawing in cut_drawings(compiled(run)):
        assert overlaps(drawing) == []


@each_demo
def test_cuts_are_drawn_at_one_scale(run: Run) -> None:
    build = compiled(run)
    for sheet, drawing in zip(build.plan.cutting.sheets, cut_drawings(build), strict=True):
        cuts = [item for item in drawing.items if isinstance(item, Line) and item.role == "cut"]
        outline = next(item for item in drawing.items if isinstance(item, Line) and item.closed)
        wide = max(x for x, _ in outline.points) - min(x for x, _ in outline.points)
        scale = wide / sheet.layout.sheet.width
        for line, cut in zip(cuts, sheet.layout.cuts, strict=True):
            (ax, ay), (bx, by) = line.points
            length = cut.panel.height if cut.axis == "x" else cut.panel.width
            assert abs(bx - ax) + abs(by - ay) == pytest.approx(length * scale)
