import pytest

from foredge.drawing.model import Drawing, Item, Label, Measured
from foredge.drawing.textbox import overlaps, text_width

# Advance widths of printable ASCII in 1/2048 em. Source: DejaVu Sans 2.37, table hmtx.
# fmt: off
DEJAVU = (
    651, 821, 942, 1716, 1303, 1946, 1597, 563, 799, 799, 1024, 1716, 651, 739, 651, 690, 1303,
    1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 1303, 690, 690, 1716, 1716, 1716, 1087, 2048,
    1401, 1405, 1430, 1577, 1294, 1178, 1587, 1540, 604, 604, 1343, 1141, 1767, 1532, 1612, 1235,
    1612, 1423, 1300, 1251, 1499, 1401, 2025, 1403, 1251, 1403, 799, 690, 799, 1716, 1024, 1024,
    1255, 1300, 1126, 1300, 1260, 721, 1300, 1298, 569, 569, 1186, 569, 1995, 1298, 1253, 1300,
    1300, 842, 1067, 803, 1298, 1212, 1675, 1212, 1212, 1075, 1303, 690, 1303, 1716,
)
# fmt: on


def page(*items: Item) -> Drawing:
    return Drawing("x", "x", 100, 60, items)


def test_no_printed_letter_is_wider_than_estimated() -> None:
    for code, width in enumerate(DEJAVU, start=32):
        assert text_width(chr(code), 1) >= width / 2048, chr(code)


def test_the_estimate_is_not_wildly_wide() -> None:
    words = "Board 149 x 215 mm, thickness at the spine"
    printed = sum(DEJAVU[ord(char) - 32] for char in words) / 2048
    assert printed < text_width(words, 1) < 1.25 * printed


def test_accents_count_as_their_letter_and_wide_signs_as_an_em() -> None:
    assert text_width("é", 10) == text_width("e", 10) == text_width("e\u0301", 10)
    assert text_width("書", 10) >= 10


def test_words_apart_are_fine() -> None:
    assert overlaps(page(Label((10, 20), "one"), Label((10, 30), "two"))) == []


def test_words_on_words_are_found() -> None:
    assert overlaps(page(Label((10, 20), "one"), Label((12, 21), "two"))) == [
        "'one' and 'two' overlap"
    ]


@pytest.mark.parametrize("turn", [0.0, 45.0, 90.0])
def test_turned_words_are_held_against_each_other_as_they_are_turned(turn: float) -> None:
    crossing = page(Label((50, 30), "a long word", 4, turn, "middle"), Label((49, 31), "x", 4))
    assert overlaps(crossing)


def test_a_diagonal_word_leaves_the_corners_of_its_bounding_box_free() -> None:
    assert overlaps(page(Label((10, 10), "diagonal", 5, 45), Label((30, 10), "free", 4))) == []


def test_words_off_the_page_are_found() -> None:
    assert overlaps(page(Label((95, 20), "too far"))) == ["'too far' leaves the page"]
    assert overlaps(page(Label((10, 1), "too high"))) == ["'too high' leaves the page"]


def test_words_of_dimensions_count() -> None:
    item = Measured((10, 20), (60, 20), "50 mm", offset=8)
    assert overlaps(page(item)) == []
    assert overlaps(page(item, Label((35, 10), "here"))) == ["'50 mm' and 'here' overlap"]
