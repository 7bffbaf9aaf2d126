import pytest

from foredge.estimates import estimate_text, off_by
from foredge.explain import explain, known, listing, near
from unit.emit.sample import sample

BOARD_WIDTH = """\
case.board.width   146 mm (145.7 to 146.3)   provisional: rests on G1, not yet measured
  = width + square - (joint + board thickness + 2 × max(0 mm, square - 5 × board thickness)), \
to the nearest 0.5 mm
    width             150 mm                text_block.leaf.width, line 13
    square            5 mm                  case.square, line 31
    joint             6 mm                  case.joint, line 1
    board thickness   3.1 mm (2.8 to 3.4)   case.board.thickness; G1: not yet measured
      = layers of card
      G1: measure the board; it goes under measured: as board
        layers of card   3.1 mm (2.8 to 3.4)   board.grey.thickness; common practice   \
100 % of the band"""


def test_the_whole_tree() -> None:
    assert explain(sample(), "case.board.width") == BOARD_WIDTH


def test_the_shares_of_a_band_add_up() -> None:
    tree = explain(sample(), "text_block.block.spine")
    shares = [
        int(line.partition(" % of the band")[0].split()[-1])
        for line in tree.splitlines()
        if "% of the band" in line
    ]
    assert len(shares) == 2 and sum(shares) == 100
    assert "why: leaves and swell" in tree
    assert "source: common practice" in tree


def test_a_reading_says_how_far_off_the_estimate_was() -> None:
    build = sample(measured={"block.spine": 12.4})
    tree = explain(build, "text_block.block.spine")
    assert tree.startswith("text_block.block.spine   12.4 mm   firm")
    assert "measured, 0.4 mm above the estimate, which was 12 mm (10.2 to 14.7)" in tree
    assert "measured.block.spine, line 60" in tree


@pytest.mark.parametrize(
    ("value", "words"),
    [
        (12.0, "as estimated"),
        (11.25, "0.75 mm below the estimate"),
        (20.0, "8 mm above the estimate and outside its range"),
    ],
)
def test_off_by(value: float, words: str) -> None:
    quantity = sample(measured={"block.spine": value}).quantity("text_block.block.spine")
    assert off_by(quantity) == words
    assert estimate_text(quantity) == "12 mm (10.2 to 14.7)"


def test_a_derivation_is_told_once() -> None:
    tree = explain(sample(), "case.board.height")
    assert tree.count("= height - trim + trim") == 1
    assert "decided by" not in tree
    twice = explain(sample(), "case.spine.width")
    assert twice.count("paper of the block   10 mm") == 1


def test_pieces_leaves_and_table_figures_can_be_asked_for() -> None:
    build = sample()
    assert "blank: cut now, trimmed after" in explain(build, "text_block.lining.width")
    assert "case.square, line 31" in explain(build, "case.square")
    assert "common practice" in explain(build, "practice.swell.amount")


def test_a_wrong_name_raises_and_has_near_ones() -> None:
    build = sample()
    with pytest.raises(KeyError):
        explain(build, "case.bord.width")
    assert near(build, "case.bord.width")[0] == "case.board.width"
    assert near(build, "nowhere.square") == ("case.square",)
    assert near(build, "zzz") == ()


def test_everything_known_can_be_explained() -> None:
    build = sample()
    for name in known(build):
        assert explain(build, name).startswith(name)


def test_listing_is_aligned() -> None:
    lines = listing(sample()).splitlines()
    build = sample()
    assert len(lines) == len(build.whole.quantities) + len(build.plan.ledger.quantities)
    assert " ".join(lines[0].split()) == "text_block.gatherings 10 firm"
    columns = {line.index("provisional") for line in lines if "provisional" in line}
    assert columns == {lines[0].index("firm")}


def test_imperial() -> None:
    assert "5 3/4 in" in explain(sample(display="imperial"), "case.board.width")
