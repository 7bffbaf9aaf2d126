"""Folding, yield and collation as the handbooks print them."""

from __future__ import annotations

import pytest

from foredge_stages.text_block.counts import collation
from text_block_books import made, rules, value

INCH = 25.4


@pytest.mark.parametrize(
    ("sheet", "times", "leaf"),
    [
        ((20, 15), "three_times", (7.5, 5)),  # Crown octavo
        ((25, 20), "twice", (12.5, 10)),  # Royal quarto
        ((30, 22), "twice", (15, 11)),  # Imperial quarto
    ],
)
def test_named_formats(sheet: tuple[float, float], times: str, leaf: tuple[float, float]) -> None:
    """Sheets: Douglas Cockerell, Bookbinding, and the Care of Books, 1901, p. 283. Folded:
    Joseph W. Zaehnsdorf, The Art of Bookbinding, 2nd ed. 1890, pp. 4-5."""
    size = {"width": f"{sheet[0]} in", "height": f"{sheet[1]} in"}
    result = made({"chart-paper": size}, leaf={"width": "60 mm", "height": "90 mm"})
    sides = sorted(value(result, f"folded.{times}.{side}") / INCH for side in ("width", "height"))
    assert sides == pytest.approx(sorted(leaf))


def test_collation_of_sections_of_eight_leaves() -> None:
    """Cockerell 1901, pp. 58-59: the odd pages that share a folio, three sections."""
    printed = (
        ((1, 15), (3, 13), (5, 11), (7, 9)),
        ((17, 31), (19, 29), (21, 27), (23, 25)),
        ((33, 47), (35, 45), (37, 43), (39, 41)),
    )
    assert tuple(collation(4, first) for first in (1, 17, 33)) == printed


def test_eight_leaves_are_sixteen_pages() -> None:
    """Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, p. 111."""
    result = made(gatherings={"count": 1, "folios": 4})
    assert (value(result, "leaves"), value(result, "pages")) == (8, 16)


def test_twelve_folios_at_three_make_four_gatherings() -> None:
    """Indiana University Libraries, Repair and Enclosure Treatments Manual, cbind010."""
    result = made(gatherings={"pages": 4 * 12, "folios": 3})
    assert value(result, "gatherings") == 4


@pytest.mark.parametrize(
    ("material", "fine", "poor"),
    [
        ("bulky-book", (5, 6), (4, 7)),
        ("office", (4, 5), (3, 6)),
        ("book", (3, 4), (2, 5)),
        ("construction", (2, 3), (1, 4)),
        ("kraft-bag", (2, 3), (1, 4)),
    ],
)
def test_folios_by_class_of_paper(
    material: str, fine: tuple[int, ...], poor: tuple[int, ...]
) -> None:
    """The same page: paperback-like leaves 5 to 6, office paper 4 to 5, hardbound-like 3 to 4,
    construction and grocery bag paper 2 to 3 folios."""
    stock = {"chart-paper": {"material": material}}
    for folios in (*fine, *poor):
        result = made(stock, gatherings={"count": 6, "folios": folios})
        assert ("folios-in-gathering" in rules(result)) == (folios in poor), folios


def test_a_letter_sheet_has_to_be_quartered_for_its_grain() -> None:
    """ "Cutting the paper", Vanilla Joy (Japanese stab binding): long-grain letter paper
    quartered gives 5.5 x 4.25 in leaves with the grain along the spine; folded once it does
    not."""
    letter = {"chart-paper": {"width": "8.5 in", "height": "11 in", "grain": "height"}}
    result = made(letter, leaf={"width": "4 in", "height": "5 in"})
    facts = dict(result.facts)
    assert facts["text_block.folded.once.grain"] == "across"
    assert facts["text_block.folded.twice.grain"] == "along"
    sides = [value(result, f"folded.twice.{side}") / INCH for side in ("width", "height")]
    assert sides == pytest.approx([4.25, 5.5])


@pytest.mark.parametrize(("torn", "extra_mm"), [(False, 25), (True, 50)])
def test_rough_folios_of_a_published_plan(torn: bool, extra_mm: int) -> None:
    """ "Bookbinding basics: preparing the text block", There Is Beauty All Around: rough folios
    are 2 W + 25 mm wide, 2 W + 50 mm where the edges are torn. Ours can be told the same."""
    trim = {"head": "0 mm", "tail": "0 mm", "fore_edge": "0 mm"}
    result = made(edges_torn=torn, rough=f"{extra_mm} mm", trim=trim)
    assert value(result, "folio.width") == 2 * 150 + extra_mm
