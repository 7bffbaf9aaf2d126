"""Words find a free place, or none."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract import Label, Line, Measured
from foredge.drawing.settle import settle, shortened, words_of
from foredge.drawing.textbox import text_width

FIRST = Label((10, 10), "first")


def test_the_first_free_place_is_taken() -> None:
    below = replace(FIRST, at=(10, 20))
    assert settle((FIRST, below), (), 50, 50) == FIRST
    assert settle((FIRST, below), (FIRST,), 50, 50) == below


def test_no_place_off_the_page_or_on_other_words() -> None:
    assert settle((replace(FIRST, at=(45, 10)),), (), 50, 50) is None
    assert settle((replace(FIRST, at=(10, 1)),), (), 50, 50) is None
    assert settle((FIRST,), (replace(FIRST, at=(12, 11)),), 50, 50) is None


def test_words_of_dimensions_count_too() -> None:
    items = (Line(((0, 0), (9, 9))), Measured((0, 30), (40, 30), "40 mm"), FIRST)
    assert {label.text for label in words_of(items)} == {"40 mm", "first"}


def test_long_words_are_cut_to_their_room() -> None:
    long = replace(FIRST, text="a very long name of a part")
    cut = shortened(long, 20.0)
    assert text_width(cut.text, cut.size) <= 20.0
    assert cut.text.endswith("…") and long.text.startswith(cut.text[:-1])
    assert shortened(FIRST, 20.0) == FIRST
