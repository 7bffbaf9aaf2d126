import csv
import io
from dataclasses import replace

import pytest

from foredge.contract import Build, Piece
from foredge.emit.cut_list_csv import CutList, guard
from unit.emit.sample import sample


def rows(build: Build) -> list[dict[str, str]]:
    text = CutList().emit(build)["cut-list.csv"].decode()
    assert "\r" not in text
    return list(csv.DictReader(io.StringIO(text)))


def test_every_piece_has_a_line() -> None:
    build = sample()
    folio, lining, board = rows(build)
    assert len(build.whole.pieces) == 3
    assert board == {
        "piece": "case.board",
        "title": "board",
        "count": "2",
        "width_mm": "146",
        "height_mm": "215",
        "grain": "height",
        "stock": "",
        "material": "",
        "shape": "",
        "state": "provisional",
        "gates": "G1 G2",
        "stage": "case",
    }
    assert (folio["state"], folio["stock"], folio["count"]) == ("firm", "chart-paper", "30")
    assert (lining["state"], lining["shape"]) == ("blank", "trim to the width of the spine")


@pytest.mark.parametrize("display", ["imperial", "both"])
def test_inches_have_columns_of_their_own(display: str) -> None:
    assert rows(sample(display=display))[2]["width_in"] == "5 3/4"


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@x", "\tx", "\r=x", " =x", "\u200b=1"])
def test_a_cell_is_no_formula(cell: str) -> None:
    assert guard(cell).startswith("'")


@pytest.mark.parametrize("cell", ["board", "146", "5 7/8", "", "a=b"])
def test_other_cells_stay(cell: str) -> None:
    assert guard(cell) == cell


def test_a_hostile_piece_stays_one_line_of_text() -> None:
    build = sample()
    (stage, result), *others = build.stages
    piece = replace(result.pieces[0], title='=HYPERLINK("x"),\n"q"', material="@SUM(1)")
    assert isinstance(piece, Piece)
    changed = replace(result, pieces=(piece,))
    (first, *_) = rows(replace(build, stages=((stage, changed), *others)))
    assert first["title"] == '\'=HYPERLINK("x"), "q"'
    assert first["material"] == "'@SUM(1)"
