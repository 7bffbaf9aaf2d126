"""A clean spec becomes a Book: readings, tables, defaults, and what one copy may say."""

from __future__ import annotations

from typing import Annotated

import pytest
from msgspec import Meta

from foredge.contract import LENGTH, Origin, PartOptions
from foredge.quantity import band
from foredge.tables import TableError, load_tables
from foredge.testing import book_from, diagnostics_of, registry_of
from unit.spec.invented_plugins import REGISTRY, SPEC, Case, Wrap

BARE = "foredge: 1\ntitle: A\ntext_block: {}\ncase: {square: 5 mm}\n"


def test_readings_by_key() -> None:
    readings = book_from(SPEC, registry=REGISTRY).readings
    assert {key: q.value for key, q in readings.items()} == {
        "board": 3.1,
        "joint_cloth": 0.6,
        "block.height": 203.2,
        "block.fore_edge": 12,
    }
    height = readings["block.height"]
    assert height.name == "measured.block.height"
    assert height.origin == Origin("reading", ("measured", "block", "height"), "8 in")
    assert height.dimension == LENGTH


def test_what_is_absent_has_a_default() -> None:
    book = book_from(BARE, registry=REGISTRY)
    assert (book.title, book.display, book.step_mm) == ("A", "metric", 0.5)
    assert (book.copies.value, book.copies.origin) == (1, Origin("default"))
    assert dict(book.stock) == {} == dict(book.readings) == dict(book.done)
    assert (book.embellishment, book.finishing, book.closure) == ((), (), None)


@pytest.mark.parametrize(
    ("display", "step"), [("metric", 0.5), ("both", 0.5), ("imperial", 25.4 / 32)]
)
def test_the_step_follows_what_is_shown(display: str, step: float) -> None:
    book = book_from(BARE + f"display: {display}\n", registry=REGISTRY)
    assert (book.display, book.step_mm) == (display, step)


def test_a_figure_is_the_same_leaf_each_time() -> None:
    book = book_from(BARE, registry=REGISTRY)
    value = load_tables().row("cloth", "canvas").get("thickness")
    thickness = book.table("cloth", "canvas", "thickness")
    assert thickness is book.table("cloth", "canvas", "thickness")
    assert thickness.name == "cloth.canvas.thickness"
    assert (thickness.value, thickness.low, thickness.high) == (value.number, value.low, value.high)
    assert thickness.origin is not None
    assert (thickness.origin.kind, thickness.origin.citation) == ("table", value.citation)
    apart = band(thickness - book.table("cloth", "canvas", "thickness"))
    assert (apart.low, apart.high) == (0, 0)  # one unknown, not two
    assert thickness is not book_from(BARE, registry=REGISTRY).table("cloth", "canvas", "thickness")


def test_practice_and_words() -> None:
    book = book_from(BARE, registry=REGISTRY)
    assert book.practice("trim-allowance").label == "Allowance for trimming a leaf"
    assert book.words("cloth", "canvas", "title") == load_tables().row("cloth", "canvas").title
    assert book.words("cloth", "canvas", "no-such-word") == ""
    with pytest.raises(TableError):
        book.practice("no-such-thing")


def test_done_with_and_without_a_time() -> None:
    done = book_from(SPEC, registry=REGISTRY).done
    assert dict(done) == {"case.cut": "", "case.cover": "2026-12-01 20:30"}


def test_measured_and_done_speak_of_one_copy() -> None:
    found = diagnostics_of(SPEC + "copies: 2\n", registry=REGISTRY)
    assert [one.partition(": error: ")[2] for one in found] == [
        "'measured' speaks of one book, and copies is 2. Write a small spec for each copy, with "
        "extends, and put it there. [one-copy-only]",
        "'done' speaks of one book, and copies is 2. Write a small spec for each copy, with "
        "extends, and put it there. [one-copy-only]",
    ]
    assert diagnostics_of(SPEC + "copies: 1\n", registry=REGISTRY) == []
    assert book_from(BARE + "copies: 12\n", registry=REGISTRY).copies.value == 12


def test_a_book_cannot_be_changed() -> None:
    book = book_from(SPEC, registry=REGISTRY)
    with pytest.raises(TypeError):
        book.stock["x"] = book.stock["card"]  # type: ignore[index]
    with pytest.raises(AttributeError):
        book.title = "other"  # type: ignore[misc]


def test_book_from_tells_what_is_wrong() -> None:
    with pytest.raises(AssertionError, match=r"book\.yaml:4:16: error: say the unit"):
        book_from(BARE.replace("5 mm", "5"), registry=REGISTRY)


def test_a_day_that_no_calendar_has() -> None:
    found = diagnostics_of(SPEC.replace("2026-12-01 20:30", "2026-02-30"), registry=REGISTRY)
    assert [one.partition(": error: ")[2] for one in found] == [
        "there is no 2026-02-30: no calendar has that day. [wrong-form]"
    ]


class PickyOptions(PartOptions, tag="picky", frozen=True, kw_only=True):
    """Has a check of its own."""

    rows: Annotated[int, Meta(description="How many.")] = 2

    def __post_init__(self) -> None:
        if self.rows == 3:
            raise ValueError("3 rows cannot be laid")
        if self.rows == 4:
            raise ZeroDivisionError("by four")


class Picky(Wrap):
    name, title, options = "picky", "Picky", PickyOptions  # type: ignore[assignment]


@pytest.mark.parametrize(
    ("rows", "text"),
    [
        (3, "'picky' does not take these options: 3 rows cannot be laid. [options-refused]"),
        (4, "the options of 'picky' failed: ZeroDivisionError: by four. This is a fault in the"),
    ],
)
def test_options_with_checks_of_their_own(rows: int, text: str) -> None:
    registry = registry_of(Picky(), Case(), builtins=False)
    spec = BARE.replace("5 mm}", f"5 mm, covering: {{use: picky, rows: {rows}}}}}")
    found = diagnostics_of(spec, registry=registry)
    assert len(found) == 1
    assert text in found[0]
    assert book_from(spec.replace(f"rows: {rows}", "rows: 5"), registry=registry)


@pytest.mark.parametrize(
    ("said", "paper"),
    [
        ("", "a4"),
        ("display: both\n", "a4"),
        ("display: imperial\n", "letter"),
        ("display: imperial\nprint: a4\n", "a4"),
        ("print: letter\n", "letter"),
    ],
)
def test_templates_are_printed_on_the_paper_at_hand(said: str, paper: str) -> None:
    assert book_from(BARE + said, registry=REGISTRY).print_on == paper


def test_no_other_paper_is_known() -> None:
    (told,) = diagnostics_of(BARE + "print: foolscap\n", registry=REGISTRY)
    assert "foolscap" in told and "a4" in told
