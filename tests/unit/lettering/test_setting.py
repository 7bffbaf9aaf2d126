"""Text in lines: widths, extents, breaks."""

from __future__ import annotations

from itertools import combinations, pairwise

import pytest
from hypothesis import given, settings, strategies as st

from foredge_lettering.hershey import StrokeSet
from foredge_lettering.setting import Setting, break_text, missing, set_lines

PLAIN = StrokeSet("plain")
WORDS = st.lists(st.text("abHIt", min_size=1, max_size=6), min_size=1, max_size=7)


def test_letters_stand_side_by_side_and_tracking_goes_between_them() -> None:
    close = set_lines(["HH"], PLAIN, 0.0, 1.5)
    wide = set_lines(["HH"], PLAIN, 0.25, 1.5)
    assert wide.width - close.width == pytest.approx(0.25)
    assert close.height == pytest.approx(1)


def test_height_runs_from_the_highest_ink_to_the_lowest() -> None:
    assert set_lines(["H", "H"], PLAIN, 0, 1.5).height == pytest.approx(2.5)
    assert set_lines(["H", "p"], PLAIN, 0, 1.5).height == pytest.approx(2.5 + 7 / 21)
    assert set_lines(["H", "", "H"], PLAIN, 0, 1.5).height == pytest.approx(4)


def test_letters_are_counted_without_spaces() -> None:
    assert set_lines(["A tide", "of two"], PLAIN, 0, 1.5).letters == 10


def test_a_lone_i_has_a_width_to_divide_by() -> None:
    assert set_lines(["I"], PLAIN, 0, 1.5).width > 0
    assert set_lines(["-"], PLAIN, 0, 1.5).height > 0


def test_missing_letters_are_named_with_their_line_once() -> None:
    assert missing(["plain", "é ü é"], PLAIN) == [(2, "é"), (2, "ü")]


def largest(setting: Setting, box: tuple[float, float]) -> float:
    return min(box[0] / setting.width, box[1] / setting.height)


@given(WORDS, st.floats(20, 300), st.floats(10, 200))
@settings(max_examples=60, deadline=None)
def test_no_other_breaks_stand_larger(words: list[str], width: float, height: float) -> None:
    found = break_text(" ".join(words), PLAIN, 0.05, 1.5, (width, height))
    assert " ".join(row.text for row in found.rows) == " ".join(words)
    best = 0.0
    for count in range(len(words)):
        for cuts in combinations(range(1, len(words)), count):
            ends = (0, *cuts, len(words))
            lines = [" ".join(words[a:b]) for a, b in pairwise(ends)]
            best = max(best, largest(set_lines(lines, PLAIN, 0.05, 1.5), (width, height)))
    # All breaks into as many lines are equal in height but for a descender in the last one.
    assert largest(found, (width, height)) >= best * 0.9


def test_the_longest_text_is_broken_in_a_moment() -> None:
    found = break_text("a " * 150, PLAIN, 0.0, 1.5, (100.0, 60.0))
    assert sum(len(row.text.split()) for row in found.rows) == 150
