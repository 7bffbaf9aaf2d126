"""Thread, swell, stations and tapes as published."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest

import foredge_stages.text_block.block as block
from foredge.contract import StageResult, number, thread_figures
from foredge_stages.text_block.plan import plan
from text_block_books import book, made, quantity, rules, value

INCH = 25.4


def threaded(stock: dict[str, object] | None = None, **changes: object) -> StageResult:
    return made({"linen": stock} if stock else None, end_papers={"use": "tipped"}, **changes)


# Lea, ply, resultant tex and diameter in mm. Tex: lea is 300 yards in a pound (Jeff Peachey,
# "What do the sizes of linen thread actually mean?"); sizes sold: Book-repair, "Linen thread".
LINEN = [
    ("12/4", 551.2, 0.88), ("18/3", 275.6, 0.62), ("25/3", 198.4, 0.53), ("30/5", 275.6, 0.62),
    ("35/3", 141.7, 0.45), ("60/3", 82.7, 0.34),
]  # fmt: skip


@pytest.mark.parametrize(("size", "tex", "diameter"), LINEN)
def test_linen_sizes(size: str, tex: float, diameter: float) -> None:
    """Peirce's formula at 1.1 cm3/g, d(cm) = 0.375/100 sqrt(tex): R. Hawlader, "Relation between
    yarn dia and yarn count", 2015. The constant is exactly 0.3742."""
    result = threaded({"size": size})
    found = value(result, "thread.diameter")
    assert found == pytest.approx(0.0375 * math.sqrt(tex), rel=0.005)
    assert found == pytest.approx(diameter, abs=0.006)


@pytest.mark.parametrize(("row", "tex"), [("linen-25-3", 198.4), ("linen-12-4", 551.2)])
def test_rows_of_the_table_agree_with_their_size(row: str, tex: float) -> None:
    """Resultant tex = 1653.5 x ply / lea: M. Islam, "Count conversion calculation of yarn", 2015
    (who prints 1653)."""
    shelf = book({"linen": {"size": None, "material": row}})
    diameter = thread_figures(shelf, "linen").diameter.value
    density = shelf.table("thread", row, "packing").value
    assert diameter**2 * math.pi / 4 * density * 1e6 == pytest.approx(tex, abs=0.1)


def test_a_source_that_rounds_its_thread_short() -> None:
    """Isabel Tipton on Don Taylor's pages, 2014: 24/3 linen "about 2,000 yards per pound". It is
    24 x 300 / 3 = 2400: a sixth more thread, and a thinner one."""
    wrong = 453.59237 / (2000 * 0.9144) * 1000
    right = 1653.515 * 3 / 24
    assert wrong / right == pytest.approx(1.2, abs=0.001)
    assert value(threaded({"size": "24/3"}), "thread.diameter") == pytest.approx(
        value(threaded({"size": f"{right:.3f} tex"}), "thread.diameter"), rel=1e-4
    )


def test_twenty_sections_add_twenty_threads() -> None:
    """Douglas Cockerell, Bookbinding, and the Care of Books, 1901, p. 119: swell is n x d."""
    result = threaded(gatherings={"count": 20, "folios": 4})
    bedded = value(result, "thread.diameter") * book().table("thread", "linen", "bedding").value
    assert value(result, "swell") / bedded == pytest.approx(20)


def test_nineteen_sections_of_half_a_millimetre() -> None:
    """Douglas W. Jones, Bookbinding: A Tutorial, University of Iowa 1995, sec. 4: thread about
    1/2 mm when compressed, 19 sections: 19 thicknesses, so 9.5 mm."""
    bedding = book().table("thread", "linen", "bedding").value
    thread = {"size": None, "diameter": f"{0.5 / bedding:.6f} mm"}
    result = threaded(thread, gatherings={"count": 19, "folios": 4})
    assert value(result, "swell") == pytest.approx(9.5, abs=0.001)


def test_two_on_halves_thread_in_the_folds_and_swell() -> None:
    """Cockerell 1901, p. 107: two sheets on halves the swell."""
    made_of = book()
    planned = plan(made_of, made_of.sections["text_block"])
    counts, thread = planned.paper.counts, planned.thread
    all_along, two_on = (
        block.swell(counts, thread.diameter, thread.figures.bedding, threads, number(0))
        for threads in (number(1), number(0.5))
    )
    assert two_on.value / all_along.value == pytest.approx(0.5)


def test_five_bands_make_six_stretches_inside_the_fold() -> None:
    """Cockerell 1901, p. 107: all along on five bands, six stitches a section."""
    result = threaded(
        sewing={"use": "tapes", "thread": "linen", "count": 5},
        leaf={"width": "150 mm", "height": "290 mm"},
    )
    assert value(result, "stations") / 2 == 6


@pytest.mark.parametrize(("height", "tapes"), [(199, 2), (200, 3), (250, 3), (300, 3), (301, 4)])
def test_tapes_by_height(height: int, tapes: int) -> None:
    """Public Works and Government Services Canada, Quality Levels for Binding, 7.4: two tapes
    below 20 cm, three from 20 to 30, four above (the page says "bulk", plainly the height)."""
    leaf = {"width": "100 mm", "height": f"{height} mm"}
    assert value(threaded(leaf=leaf), "tapes") == tapes


def test_least_width_of_a_tape() -> None:
    """The same clause: each tape at least 1.25 cm wide."""
    for width, narrow in (("12.5 mm", False), ("12.4 mm", True)):
        result = threaded(sewing={"use": "tapes", "thread": "linen", "width": width})
        assert ("tape-narrow" in rules(result)) == narrow


def test_three_tapes_of_a_school_book() -> None:
    """Florence O. Bean and John C. Brodhead, Bookbinding for Beginners, 1914, p. 36: three tapes,
    one in the middle and one 1 to 1 1/2 in from each end, kettles 1/2 in from the ends, eight
    holes. Ours lie there without being told for books of a school book's height."""
    for height in (6.5, 7.0, 7.5, 8.0):
        result = threaded(
            leaf={"width": "5 in", "height": f"{height} in"},
            sewing={"use": "tapes", "thread": "linen", "count": 3, "kettle": "1/2 in"},
            trim="none",
        )
        at = [value(result, f"station.{place}") / INCH for place in range(1, 9)]
        assert at[0] == pytest.approx(0.5, abs=0.025)
        assert at[-1] == pytest.approx(height - 0.5, abs=0.025)
        assert 1.0 <= at[1] <= 1.5 and 1.0 <= height - at[-2] <= 1.5
        assert (at[3] + at[4]) / 2 == pytest.approx(height / 2, abs=0.02)
        assert value(result, "stations") == 8


def test_five_punctures_of_a_school_pamphlet() -> None:
    """Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, pp. 112, 124: five punctures,
    3/4 to 1 in from the head, 1 1/4 to 1 1/2 in from the foot, the others equal."""
    result = threaded(
        leaf={"width": "5 in", "height": "8 in"},
        trim="none",
        sewing={
            "use": "link-stitch", "stations": 5, "end_distance": "7/8 in",
            "tail_distance": "1 3/8 in",
        },
    )  # fmt: skip
    at = [value(result, f"station.{place}") / INCH for place in range(1, 6)]
    assert 0.75 <= at[0] <= 1 and 1.25 <= 8 - at[-1] <= 1.5
    steps = [after - before for before, after in pairwise(at)]
    assert steps == pytest.approx([sum(steps) / 4] * 4, abs=0.03)


def test_stations_one_centimetre_from_the_head_and_two_from_the_tail() -> None:
    """Paul Adam, Practical Bookbinding, 1903, p. 42: 1 cm from the head, 2 cm from the tail, the
    rest equal."""
    sewing = {"use": "link-stitch", "end_distance": "1 cm", "tail_distance": "2 cm"}
    result = threaded(sewing=sewing, trim="none")
    assert value(result, "station.1") == 10
    last = int(value(result, "stations"))
    assert 205 - value(result, f"station.{last}") == 20


def spanned(span_in: float, gatherings: int) -> StageResult:
    """Link sewing whose end holes lie ``span_in`` apart."""
    return threaded(
        leaf={"width": "5 in", "height": f"{span_in + 1} in"},
        trim="none",
        gatherings={"count": gatherings, "folios": 4},
        sewing={"use": "link-stitch", "thread": "linen", "end_distance": "1/2 in"},
    )


def test_thread_against_the_hole_span_rule() -> None:
    """CSRA Craft Conspiracy, "Bookbinding part two: stitching", 2011: 7 in between the end holes,
    10 signatures, 7 x 10 + 6 to 8 in, "around 78". The rule leaves the links out and has no
    reserve: our path along the folds is its product, and its whole lies between our bare path
    (no tails) less the links, and what we have the maker make ready."""
    result = spanned(7, 10)
    along, path = (value(result, f"thread.{key}") / INCH for key in ("along_folds", "path"))
    ready = value(result, "thread.length") / INCH
    assert along == pytest.approx(70, abs=0.3)
    assert along < 78 < ready
    assert 1.0 < path / along < 1.25
    assert 1.15 < ready / 78 < 1.7


def test_seven_signatures_of_six_inches() -> None:
    """ "Coptic" lesson page of the Seifert family (home.rmi.net): 7 signatures x 6 in = 42 in. The
    product only: it is what runs along the folds, and would not reach."""
    result = spanned(6, 7)
    assert value(result, "thread.along_folds") / INCH == pytest.approx(42, abs=0.2)
    assert value(result, "thread.path") / INCH > 42


def test_the_reserve_of_a_logged_binding() -> None:
    """Bookzoompa, "Leather and longstitch", 2015: 84 in cut, 72 in used, so 17 % to spare."""
    result = spanned(7, 10)
    joins = value(result, "thread.joins")
    bare = value(result, "thread.path") + 300 + joins * 60
    assert value(result, "thread.length") / bare == pytest.approx(84 / 72, abs=0.02)


def test_super_of_a_school_book() -> None:
    """Vaughn 1912, p. 117: the super is shorter than the book and 2 to 3 in wider than the
    back."""
    result = made()
    wider = (value(result, "super.width") - value(result, "block.spine")) / INCH
    assert 2 <= wider <= 3
    assert quantity(result, "super.height").value < value(result, "block.height")


def test_long_stitch_log() -> None:
    """Bookzoompa, "Leather and longstitch", 2015: a book 127 mm tall of 32 folded sheets, 25 mm at
    the spine: 84 in of cord cut, 72 in used. The log does not say how many gatherings; sixteen of
    two sheets, 1.56 mm each, are taken here: four or eight sheets to a gathering would need less
    than half the cord used."""
    result = threaded(
        {"size": None, "diameter": "0.8 mm"},
        leaf={"width": "90 mm", "height": "127 mm"},
        trim="none",
        gatherings={"count": 16, "folios": 2},
        sewing={"use": "long-stitch", "thread": "linen"},
    )
    assert value(result, "thread.path") / INCH == pytest.approx(72, rel=0.1)
    assert value(result, "thread.length") / INCH > 84


def test_long_stitch_end_stations_half_an_inch_in() -> None:
    """Green Coursehub, "Long stitch": end stations about half an inch from the edge, the others
    evenly between; the spine is the pressed gatherings and 1 to 2 mm for the thread."""
    result = threaded(
        leaf={"width": "90 mm", "height": "6 in"},
        trim="none",
        gatherings={"count": 5, "folios": 4},
        sewing={"use": "long-stitch", "thread": "linen"},
    )
    last = int(value(result, "stations"))
    at = [value(result, f"station.{place}") for place in range(1, last + 1)]
    assert at[0] / INCH == pytest.approx(0.5, abs=0.03)
    assert (152.4 - at[-1]) / INCH == pytest.approx(0.5, abs=0.03)
    paper = 5 * 8 * value(result, "leaf.thickness")
    assert 1 <= value(result, "sewing_strip.spine") - paper <= 2
