"""Each finish by itself: what it describes itself as, amounts, and what the maker reads."""

from __future__ import annotations

import math

import pytest

from finishing_books import RELIEF, book, finished, operation, pressed, registry, words
from foredge.contract import cautions, coats_of
from foredge.testing import check_plugin
from foredge_stages.finishing.rest import rest

ALL = (
    "seal", "prime", "base-coat", "wash", "dry-brush", "highlight", "metallic", "metal-leaf",
    "texture-paint", "glitter", "brush-varnish", "spray-varnish", "wax",
)  # fmt: skip
BOARD = 147.0 * 211.0


def test_these_are_all_there_are() -> None:
    assert set(registry().names("finish")) == set(ALL)


@pytest.mark.parametrize("name", ALL)
def test_it_keeps_the_contract(name: str) -> None:
    found = registry().find("finish", name)
    assert found is not None
    check_plugin(found.plugin)


@pytest.mark.parametrize("name", ALL)
def test_its_amounts_follow_its_row_and_its_coats(name: str) -> None:
    of = book(f"{{use: {name}, on: front, coats: 3}}")
    (coat,) = coats_of(of)
    result = finished(of)
    one = BOARD * of.table("paints", coat.row, "coverage").value
    assert result.quantity(f"finishing.{name}.coat").value == pytest.approx(one)
    whole = max(3 * one * 1.3, 1000.0)
    assert result.quantity(f"finishing.{name}.whole").value == pytest.approx(whole)


@pytest.mark.parametrize("name", ALL)
def test_its_waits_and_cautions_are_those_of_its_row(name: str) -> None:
    of = book(f"{{use: {name}}}")
    (coat,) = coats_of(of)
    work = operation(finished(of), name)
    usual = of.table("paints", coat.row, "coats").value
    assert work.wait is not None
    wait = of.table("paints", coat.row, "next").value * usual
    assert work.wait.value == pytest.approx(wait)
    assert work.cautions == cautions(of, "paints", coat.row)


@pytest.mark.parametrize("name", [one for one in ALL if one not in ("wax", "brush-varnish",
                                                                    "spray-varnish")])  # fmt: skip
def test_colour_goes_on_the_relief_where_there_is_one(name: str) -> None:
    of = book(f"{{use: {name}}}", embellishment=RELIEF)
    (coat,) = coats_of(of)
    assert {(region.face, region.kind) for region in coat.regions} == {("front", "relief")}
    assert "the relief" in operation(finished(of, pressed(relief=True)), name).title


def test_white_glue_is_thinned_and_told_by_mass_like_all_other_glue() -> None:
    of = book("{use: seal, on: front}")
    result = finished(of)
    paint = result.quantity("finishing.seal.paint").value
    assert paint == pytest.approx(result.quantity("finishing.seal.water").value)
    (use,) = operation(result, "seal").uses
    assert use.material == of.words("adhesives", "pva", "title")
    assert use.amount.value == pytest.approx(paint * 1.08e-3)


def test_bought_sealer_is_used_as_it_comes() -> None:
    of = book("{use: seal, using: decoupage-glue}")
    assert coats_of(of)[0].row == "decoupage-glue"
    assert "Mix" not in words(operation(finished(of), "seal"))


def test_a_wash_is_one_part_paint_to_three_of_water() -> None:
    result = finished(book("{use: wash}"))
    whole, paint = (result.quantity(f"finishing.wash.{part}").value for part in ("whole", "paint"))
    assert paint == pytest.approx(whole / 4)


@pytest.mark.parametrize(("of", "soluble"), [("acrylic", False), ("ink", True),
                                             ("watercolour", True)])  # fmt: skip
def test_ink_and_watercolour_stay_soluble(of: str, soluble: bool) -> None:
    (coat,) = coats_of(book(f"{{use: wash, of: {of}}}"))
    assert coat.soluble is soluble


def test_leaves_are_counted_by_what_they_show_between_laps() -> None:
    result = finished(book("{use: metal-leaf, on: front, leaf: gold, share: 50 %}"))
    shown = (80.0 - 5.0) ** 2
    wanted = math.ceil(BOARD / 2 / shown * 1.15)
    assert result.quantity("finishing.metal-leaf.leaves").value == wanted
    leaves = operation(result, "metal-leaf").uses[1]
    assert leaves.amount.value == wanted
    bare = finished(book("{use: metal-leaf, on: spine}"))
    more = operation(result, "metal-leaf").hands_on.value
    assert more > operation(bare, "metal-leaf").hands_on.value


@pytest.mark.parametrize(("coat", "says"), [("glitter", "sheds"), ("metal-leaf", "green"),
                                            ("base-coat", "")])  # fmt: skip
def test_what_must_not_stay_bare_says_why(coat: str, says: str) -> None:
    (found,) = coats_of(book(f"{{use: {coat}}}"))
    assert says in found.needs_cover and bool(found.needs_cover) == bool(says)


def test_gold_does_not_tarnish() -> None:
    assert coats_of(book("{use: metal-leaf, leaf: gold}"))[0].needs_cover == ""


@pytest.mark.parametrize(("sheen", "days"), [("matte", 7), ("gloss", 10)])
def test_gloss_varnish_stays_open_longer(sheen: str, days: int) -> None:
    result = finished(book(f"{{use: brush-varnish, sheen: {sheen}}}"))
    assert result.quantity("finishing.wait.close").value == pytest.approx(days * 86_400)


def test_a_spray_is_used_outdoors_with_its_caution() -> None:
    work = operation(finished(book("{use: spray-varnish}")), "spray-varnish")
    assert work.outdoors and "spray-solvent" in work.cautions


def test_wax_warns_of_its_rags() -> None:
    work = operation(finished(book("{use: wax}")), "wax")
    assert {"oily-rags", "spray-solvent"} <= set(work.cautions)


def test_a_book_without_coats_has_nothing_to_rest() -> None:
    assert rest(book(), (), ("case.press",)).operations == ()


@pytest.mark.parametrize("name", ["brush-varnish", "spray-varnish", "wax"])
def test_what_protects_follows_the_paint(name: str) -> None:
    def regions(*coats: str, more: str = "") -> set[tuple[str, str]]:
        last = coats_of(book(*coats, f"{{use: {name}}}", embellishment=RELIEF + more))[-1]
        return {(region.face, region.kind) for region in last.regions}

    letters = "  - {use: lettering, on: spine, text: LOG}\n"
    assert regions("{use: base-coat}") == {("front", "relief")}
    assert ("spine", "letters") in regions("{use: base-coat}", more=letters)
    assert ("back", "plain") in regions("{use: base-coat, on: faces}")
    assert ("back", "plain") in regions()


def test_many_varnishes_are_described_without_delay() -> None:
    coats = ("{use: base-coat}", *(["{use: brush-varnish}"] * 60))
    assert len(coats_of(book(*coats, embellishment=RELIEF))) == 61
