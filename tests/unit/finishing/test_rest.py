"""When the book may be closed and posted, and its size by then."""

from __future__ import annotations

import pytest

from case_books import mm
from finishing_books import RELIEF, book, finished, ids, operation, pressed
from foredge.contract import StageResult, Upstream
from foredge.quantity import band

HOUR, DAY = 3600.0, 86_400.0


def fact(result: object, name: str) -> str:
    return dict(result.facts)[f"finishing.{name}"]  # type: ignore[attr-defined]


def test_the_slowest_coat_says_when_it_may_be_closed() -> None:
    result = finished(book("{use: seal}", "{use: brush-varnish}"))
    assert result.quantity("finishing.wait.close").value == pytest.approx(168 * HOUR)
    assert operation(result, "rest-open").wait is result.quantity("finishing.wait.close")
    assert ids(result)[-2:] == ["rest-open", "rest-closed"]
    assert fact(result, "may_close") == "finishing.rest-open"
    assert fact(result, "may_post") == "finishing.rest-closed"


def test_waits_after_a_coat_count_towards_its_own_time() -> None:
    # The base coat's 168 h have run for 72 h (rest), 2 x 3 h (varnish) and 30 min (wax) when the
    # wax is dry; sprayed varnish has 72 h of its own, less the wax's half hour.
    result = finished(book("{use: base-coat}", "{use: spray-varnish}", "{use: wax}"))
    left = 168 - 72 - 3 * 0.5 - 0.5
    assert result.quantity("finishing.wait.close").value == pytest.approx(left * HOUR)


def test_posting_waits_for_the_slow_end_and_never_less_than_closing() -> None:
    result = finished(book("{use: brush-varnish}"))
    assert result.quantity("finishing.wait.post").value == pytest.approx(336 * HOUR)
    more = operation(result, "rest-closed").wait
    assert more is not None and more.value == pytest.approx((336 - 168) * HOUR)


def test_a_bare_book_is_closed_in_the_press() -> None:
    result = finished(book())
    assert result.operations == ()
    assert fact(result, "may_close") == fact(result, "may_post") == "case.press"
    assert result.quantity("finishing.wait.close").value == 0
    assert result.quantity("finishing.wait.post").value == pytest.approx(72 * HOUR)


def test_the_finished_book_is_thicker_by_relief_and_coats() -> None:
    bare = finished(book())
    raised = finished(book(embellishment=RELIEF), pressed(relief=True))
    painted = finished(book("{use: texture-paint, on: front}"))
    assert bare.quantity("finishing.closed.thickness").value == pytest.approx(17.0)
    assert raised.quantity("finishing.closed.thickness").value == pytest.approx(34.0)
    # 1000 ml/m2 of paste is 1 mm wet; 0.4 of it stays (practice.yaml, paint-dry-share).
    assert painted.quantity("finishing.closed.thickness").value == pytest.approx(17.4)


def test_the_thickness_rests_on_the_reliefs_gate_and_has_its_band() -> None:
    thick = finished(book(embellishment=RELIEF), pressed(relief=True)).quantity(
        "finishing.closed.thickness"
    )
    assert thick.gates == {"G3"}
    found = band(thick)
    assert (found.low, found.high) == (pytest.approx(32.0), pytest.approx(36.0))


def test_a_relief_takes_its_own_coats_and_the_face_round_it_does_not_count() -> None:
    of = book("{use: texture-paint, on: front, leave: [relief]}", embellishment=RELIEF)
    result = finished(of, pressed(relief=True))
    assert result.quantity("finishing.closed.thickness").value == pytest.approx(34.0)


def test_a_relief_on_the_spine_makes_the_book_wider() -> None:
    high = mm(4.0, "sculpt.height.spine")
    upstream = Upstream((*pressed().results, ("sculpt", StageResult(quantities=(high,)))))
    result = finished(book(), upstream)
    assert result.quantity("finishing.closed.width").value == pytest.approx(164.0)
    assert result.quantity("finishing.closed.thickness").value == pytest.approx(17.0)
