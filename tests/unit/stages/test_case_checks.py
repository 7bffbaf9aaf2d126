"""What the case warns of, and what it refuses."""

from __future__ import annotations

import pytest

from case_books import CASE, book, finished_block
from foredge.contract import Problem, Severity
from foredge_stages.case import PLUGIN


def problems(case: str = CASE, supported: str = "yes", **block: float) -> dict[str, Problem]:
    of = book(case)
    found = PLUGIN.run(of, finished_block(of, supported=supported, **block)).problems
    return {problem.rule: problem for problem in found}


def test_a_plain_case_is_clean() -> None:
    assert problems() == {}
    assert problems(supported="no") == {}


@pytest.mark.parametrize(
    ("text", "path"),
    [
        ("  square: 300 mm\n", ("case", "square")),
        ("  squares: {head: 300 mm}\n", ("case", "squares", "head")),
    ],
)
def test_square_larger_than_the_leaf(text: str, path: tuple[str, ...]) -> None:
    of = book(CASE + text)
    (found,) = PLUGIN.run(of, finished_block(of)).problems
    assert found.rule == "square-too-large"
    assert found.severity is Severity.ERROR
    assert found.path == path
    assert "300 mm" in found.text and "205 mm" in found.text


def test_no_board_left() -> None:
    found = problems(f"{CASE}  joint: 200 mm\n")["board-impossible"]
    assert found.severity is Severity.ERROR


def test_an_error_leaves_no_pieces() -> None:
    of = book(f"{CASE}  joint: 200 mm\n")
    result = PLUGIN.run(of, finished_block(of))
    assert not result.pieces and not result.operations


@pytest.mark.parametrize("joint", ["3 mm", "5.5 mm"])
def test_joint_below_what_any_case_has(joint: str) -> None:
    found = problems(f"{CASE}  joint: {joint}\n")["joint-narrow"]
    assert found.severity is Severity.WARNING
    assert found.path == ("case", "joint")


def test_joint_below_what_the_cloth_asks_for() -> None:
    case = CASE.replace("bought-cloth", "coat")
    found = problems(f"{case}  joint: 7 mm\n")["joint-narrow"]
    assert "cloth in the joint" in found.text
    assert "joint-narrow" not in problems(case)


def test_joint_too_wide() -> None:
    assert problems(f"{CASE}  joint: 14 mm\n")["joint-wide"].severity is Severity.NOTE


@pytest.mark.parametrize(("width", "word"), [("9 mm", "close"), ("25 mm", "loose")])
def test_spine_piece_does_not_fit(width: str, word: str) -> None:
    found = problems(f"{CASE}  spine: {{use: card, width: {width}}}\n")["spine-width"]
    assert word in found.consequence
    assert found.severity is Severity.WARNING


def test_thick_covering_is_told() -> None:
    found = problems(CASE.replace("bought-cloth", "coat"))["covering-thick"]
    assert found.severity is Severity.NOTE


def test_thin_board() -> None:
    case = CASE.replace("stock: grey", "thickness: 1 mm")
    assert problems(case)["board-thin"].path == ("case", "boards")


def test_tail_square_under_unsupported_sewing() -> None:
    case = f"{CASE}  square: 4 mm\n"
    assert "tail-square-unsupported" not in problems(case)
    found = problems(case, supported="no")["tail-square-unsupported"]
    assert found.path == ("case", "square")
    assert "1.5 mm" in found.remedy


def test_no_weak_source_makes_an_error() -> None:
    text = f"{CASE}  joint: 2 mm\n  spine: {{use: board, width: 5 mm}}\n  square: 9 mm\n"
    found = problems(text, supported="no")
    assert len(found) >= 4
    assert all(problem.severity is not Severity.ERROR for problem in found.values())
    assert all(problem.source for problem in found.values())
