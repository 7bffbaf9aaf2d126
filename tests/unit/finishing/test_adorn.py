"""Lettering and patterns among the coats."""

from __future__ import annotations

import pytest

from finishing_books import book, finished, ids, operation

LETTERS = "  - {use: lettering, on: front, text: TIDES}\n"
NET = "  - {use: net-pattern, stock: wrap, width: 5 mm, spacing: 20 mm}\n"


def test_letters_come_after_colour_and_before_varnish() -> None:
    of = book("{use: base-coat}", "{use: brush-varnish}", embellishment=LETTERS)
    assert ids(finished(of))[1:6] == [
        "base-coat",
        "print-lettering",
        "trace-lettering",
        "letter-lettering",
        "harden-brush-varnish",
    ]


def test_colour_on_the_letters_comes_after_them() -> None:
    of = book("{use: base-coat}", "{use: metallic, on: lettering}", embellishment=LETTERS)
    result = finished(of)
    assert operation(result, "metallic").after == ("finishing.letter-lettering",)
    area = result.quantity("finishing.lettering.area").value
    assert result.quantity("finishing.metallic.area").value == pytest.approx(area)


def test_letters_alone_are_painted_on_the_pressed_book() -> None:
    result = finished(book(embellishment=LETTERS))
    assert "case.press" in operation(result, "print-lettering").after
    assert ids(result)[-2:] == ["rest-open", "rest-closed"]


def test_two_letterings_follow_each_other_in_the_specs_order() -> None:
    of = book(embellishment=LETTERS + "  - {use: lettering, on: spine, text: LOG}\n")
    result = finished(of)
    assert "finishing.protect-lettering" in operation(result, "print-lettering-2").after


def test_a_pattern_inside_is_dry_before_the_paste_downs_are_gone() -> None:
    result = finished(book(embellishment=NET))
    sealed = operation(result, "seal-net-pattern")
    assert {"case.glue-hinge", "case.case-in"} <= set(sealed.before_any)
    assert dict(result.facts)["finishing.may_close"] == "case.press"


def test_a_pattern_counts_twice_inside_the_closed_cover() -> None:
    result = finished(book(embellishment=NET))
    one = result.quantity("finishing.net-pattern.thickness").value
    assert one > 0
    thick = result.quantity("finishing.closed.thickness").value
    assert thick == pytest.approx(17.0 + 2 * one)


def test_lettering_that_cannot_be_set_stops_the_stage_with_its_own_error() -> None:
    of = book("{use: base-coat}", embellishment="  - {use: lettering, on: front, text: '\u4e00'}\n")
    result = finished(of)
    assert [problem.rule for problem in result.problems] == ["lettering-missing-letter"]
