"""Coats one after the other: amounts on real areas, masks, waits before varnish."""

from __future__ import annotations

import pytest

from finishing_books import (
    FOOT,
    RELIEF,
    SURFACE,
    book,
    finished,
    ids,
    operation,
    pressed,
    words,
)
from foredge.contract import coats_of
from foredge.testing import check_stage
from foredge_stages.finishing import PLUGIN

BOARD = 147.0 * 211.0
OUTSIDE = 2 * BOARD + 20.0 * 211.0 + 2 * 8.0 * 211.0
HOUR = 3600.0


def test_the_stage_keeps_its_contract() -> None:
    of = book("{use: seal}", "{use: base-coat}", "{use: brush-varnish}", embellishment=RELIEF)
    check_stage(PLUGIN, of, pressed(relief=True))


def test_a_coat_goes_over_the_whole_outside_unless_told() -> None:
    result = finished(book("{use: base-coat}"))
    assert result.quantity("finishing.base-coat.area").value == pytest.approx(OUTSIDE)
    # 108 ml/m2 smooth, two coats, 30 % spare (paints.yaml, practice.yaml).
    coat = OUTSIDE * 0.108
    assert result.quantity("finishing.base-coat.coat").value == pytest.approx(coat)
    assert result.quantity("finishing.base-coat.whole").value == pytest.approx(coat * 2 * 1.3)


def test_a_relief_is_painted_by_its_surface_and_takes_more() -> None:
    of = book("{use: base-coat}", embellishment=RELIEF)
    result = finished(of, pressed(relief=True))
    assert result.quantity("finishing.base-coat.area").value == pytest.approx(SURFACE)
    assert result.quantity("finishing.base-coat.coat").value == pytest.approx(SURFACE * 1.3 * 0.108)


def test_the_ground_round_a_relief_is_the_board_less_its_base() -> None:
    of = book("{use: brush-varnish, on: front}", embellishment=RELIEF)
    result = finished(of, pressed(relief=True))
    area = result.quantity("finishing.brush-varnish.area").value
    assert area == pytest.approx(BOARD - FOOT + SURFACE)


@pytest.mark.parametrize(
    ("coat", "area"),
    [
        ("{use: base-coat, on: spine}", 20.0 * 211.0),
        ("{use: base-coat, on: [front, back]}", 2 * BOARD),
        ("{use: base-coat, on: edges}", 2 * (2 * 147.0 + 211.0) * 2.0),
        ("{use: base-coat, leave: [joint]}", OUTSIDE - 2 * 8.0 * 211.0),
        ("{use: base-coat, leave: [joint, spine]}", 2 * BOARD),
        ("{use: base-coat, leave: [paste-downs]}", OUTSIDE),
        ("{use: base-coat, share: 10 %}", OUTSIDE / 10),
    ],
)
def test_masks_and_shares_change_the_area(coat: str, area: float) -> None:
    result = finished(book(coat))
    assert result.quantity("finishing.base-coat.area").value == pytest.approx(area)


def test_tape_is_put_on_once_and_pulled_off_once() -> None:
    of = book(
        "{use: prime, leave: [joint, paste-downs]}",
        "{use: base-coat, leave: [joint, paste-downs]}",
        "{use: brush-varnish}",
    )
    result = finished(of)
    told = [words(operation(result, name)) for name in ("prime", "base-coat", "brush-varnish")]
    assert "Mask both joints and the paste-downs" in told[0]
    assert "Take the tape off" not in told[0]
    assert "Mask" not in told[1] and "Take the tape off" in told[1]
    assert "Mask" not in told[2] and "tape" not in told[2]


@pytest.mark.parametrize("coat", ["{use: wash}", "{use: wash, on: [relief, edges]}"])
def test_a_coat_beside_the_cloth_masks_it(coat: str) -> None:
    of = book(coat, embellishment=RELIEF)
    told = words(operation(finished(of, pressed(relief=True)), "wash"))
    assert "Mask the cloth round the relief" in told


def test_every_coat_comes_after_the_one_before_it_and_the_dry_clay() -> None:
    of = book("{use: seal}", "{use: base-coat}", embellishment=RELIEF)
    result = finished(of, pressed(relief=True))
    assert operation(result, "protect-block").after == ("case.press", "sculpt.check-dry")
    assert operation(result, "seal").after == ("finishing.protect-block",)
    assert operation(result, "base-coat").after == ("finishing.seal",)


def test_paint_hardens_before_varnish_and_thick_paint_longer() -> None:
    thin = finished(book("{use: base-coat}", "{use: brush-varnish}"))
    thick = finished(book("{use: texture-paint}", "{use: base-coat}", "{use: brush-varnish}"))
    assert ids(thin)[1:4] == ["base-coat", "harden-brush-varnish", "brush-varnish"]
    assert thin.quantity("finishing.wait.brush-varnish").value == pytest.approx(72 * HOUR)
    assert thick.quantity("finishing.wait.brush-varnish").value == pytest.approx(240 * HOUR)


def test_what_has_hardened_needs_no_second_rest() -> None:
    result = finished(book("{use: base-coat}", "{use: brush-varnish}", "{use: wax}"))
    assert [name for name in ids(result) if name.startswith("harden")] == ["harden-brush-varnish"]
    assert not [name for name in ids(finished(book("{use: seal}", "{use: brush-varnish}")))
                if name.startswith("harden")]  # fmt: skip


def test_a_spray_that_fixes_goes_on_at_once() -> None:
    of = book("{use: wash, of: ink}", "{use: spray-varnish}", "{use: brush-varnish}")
    assert ids(finished(of))[1:4] == ["wash", "spray-varnish", "harden-brush-varnish"]


def test_a_cool_room_and_a_fan_change_every_time() -> None:
    usual = finished(book("{use: base-coat}"))
    cool = finished(book("{use: base-coat}", more="bench: {room: {temperature: 14 degC}}\n"))
    blown = finished(book("{use: base-coat}", more="bench: {room: {fan: true}}\n"))
    wait = [operation(one, "base-coat").wait for one in (usual, cool, blown)]
    first, slow, fast = (one.value for one in wait if one is not None)
    assert (slow / first, fast / first) == (pytest.approx(1.5), pytest.approx(0.6))


def test_what_the_label_says_replaces_the_tables() -> None:
    of = book("{use: base-coat, coats: 3, one_coat: 5 ml, next: 2 h, close: 48 h}")
    result = finished(of)
    wait = operation(result, "base-coat").wait
    assert wait is not None and wait.value == pytest.approx(3 * 2 * HOUR)
    assert result.quantity("finishing.base-coat.whole").value == pytest.approx(5000 * 3 * 1.3)
    assert result.quantity("finishing.wait.close").value == pytest.approx(48 * HOUR)


def test_coats_that_share_a_use_have_keys_of_their_own() -> None:
    of = book("{use: base-coat, colour: tar}", "{use: base-coat, colour: sea green}",
              "{use: base-coat, id: foam, colour: white}")  # fmt: skip
    assert [coat.key for coat in coats_of(of)] == ["base-coat", "base-coat-2", "foam"]
    assert ids(finished(of))[1:4] == ["base-coat", "base-coat-2", "foam"]


def test_the_bottle_on_the_shelf_is_named() -> None:
    result = finished(book("{use: base-coat, colour: sea green, stock: sea-green}"))
    (use,) = operation(result, "base-coat").uses
    assert (use.material, use.stock) == ("Acrylic paint, sea green", "sea-green")


def test_no_coat_is_less_than_can_be_worked_with() -> None:
    result = finished(book("{use: highlight, on: spine}"))
    assert result.quantity("finishing.highlight.coat").value < 100
    assert result.quantity("finishing.highlight.whole").value == pytest.approx(1000)


@pytest.mark.parametrize(
    ("coat", "text"),
    [
        ("{use: wash, on: relief}", "the book has no relief"),
        ("{use: wash, on: lettering}", "the book has no lettering"),
        ("{use: wash, on: front, leave: [cloth]}", "all of it is kept clean"),
    ],
)
def test_a_coat_with_nothing_to_go_on_is_an_error(coat: str, text: str) -> None:
    (problem,) = finished(book(coat)).problems
    assert problem.rule == "finish-nothing-to-coat" and text in problem.text
    assert problem.path == ("finishing", 0)


def test_an_id_stands_once_and_is_not_one_of_the_sheets_own() -> None:
    twice = finished(book("{use: seal, id: first}", "{use: prime, id: first}"))
    own = finished(book("{use: seal, id: wait}"))
    assert [problem.rule for problem in (*twice.problems, *own.problems)] == ["id-taken"] * 2


def test_nothing_is_said_where_the_case_did_not_get_far() -> None:
    from foredge.contract import StageResult, Upstream

    assert finished(book("{use: seal}"), Upstream((("case", StageResult()),))) == StageResult()
