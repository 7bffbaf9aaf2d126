"""Thickness, swell, the readings of G2, room for pasted-in matter; bands against Monte Carlo."""

from __future__ import annotations

import random
from collections.abc import Sequence

import pytest

from foredge.contract import Quantity
from foredge.quantity import Program
from text_block_books import band_of, made, quantity, rules, value

READINGS = ("block.height", "block.width", "block.spine", "block.fore_edge")


def sample(leaf: Quantity, draw: random.Random) -> float:
    """One value of an uncertain leaf: its range is 1.96 deviations on either side."""
    z = draw.gauss(0, 1)
    reach = leaf.high - leaf.value if z > 0 else leaf.value - leaf.low
    return leaf.value + z * reach / 1.96


def percentile(values: Sequence[float], share: float) -> float:
    return sorted(values)[round(share * (len(values) - 1))]


@pytest.mark.parametrize("key", ["block.spine", "swell", "thread.length", "block.fore_edge"])
def test_bands_agree_with_monte_carlo(key: str) -> None:
    root = quantity(made(), key)
    program = Program([root])
    where = program.index[id(root)]
    draw = random.Random(7)
    values = [
        program.replay({leaf: sample(program.nodes[leaf], draw) for leaf in program.leaves()})[
            where
        ]
        for _ in range(3000)
    ]
    band = program.band(root)
    width = band.high - band.low
    assert percentile(values, 0.025) == pytest.approx(band.low, abs=0.1 * width)
    assert percentile(values, 0.975) == pytest.approx(band.high, abs=0.1 * width)


def test_a_measured_leaf_has_a_narrower_band_than_one_by_grammage() -> None:
    def share(paper: str) -> float:
        result = made(paper=paper)
        band = band_of(result, "leaf.thickness")
        return (band.high - band.low) / value(result, "leaf.thickness")

    assert share("ledger") < 0.07 < 0.2 < share("chart-paper")
    assert quantity(made(paper="ledger"), "leaf.thickness").rule == "measured"
    assert "grammage" in quantity(made(), "leaf.thickness").rule


def test_spine_is_leaves_swell_and_end_papers() -> None:
    result = made()
    parts = value(result, "leaves.thickness") + value(result, "end_papers.thickness")
    assert value(result, "block.fore_edge") == pytest.approx(parts)
    assert value(result, "block.spine") == pytest.approx(parts + value(result, "swell"))


def test_sewn_end_papers_swell_the_spine_like_gatherings() -> None:
    sewn, tipped = made(), made(end_papers={"use": "tipped"})
    assert value(sewn, "swell") / value(tipped, "swell") == pytest.approx(12 / 10)


def test_cloth_in_the_end_papers_thickens_the_spine_only() -> None:
    result = made(end_papers={"use": "cloth-jointed"})
    assert value(result, "block.spine") - value(result, "block.fore_edge") == pytest.approx(
        value(result, "swell") + value(result, "end_papers.at_spine")
    )


def test_every_reading_is_an_estimate_until_it_is_measured() -> None:
    result = made()
    (gate,) = result.gates
    assert gate.id == "G2" and gate.after == "text-block.trim"
    assert [reading.key for reading in gate.readings] == list(READINGS)
    for key in READINGS:
        assert quantity(result, key).gates == {"G2"}
    read = {
        "block": {"height": "204 mm", "width": "149 mm", "spine": "15 mm", "fore_edge": "12 mm"}
    }
    firm = made(top={"measured": read})
    assert [value(firm, key) for key in READINGS] == [204, 149, 15, 12]
    for key in (*READINGS, "super.width", "paste_down.width", "lining.height"):
        assert quantity(firm, key).firm, key
    assert value(firm, "super.width") == 15 + 2 * 28
    # What is cut already does not change its size when the reading comes in.
    for before, after in zip(result.pieces, firm.pieces, strict=True):
        assert (before.width.value, before.height.value) == (after.width.value, after.height.value)


def test_swell_beyond_what_a_flat_back_takes_is_reported() -> None:
    assert "swell-large" in rules(made())
    thin = {"linen": {"size": "60/3"}}
    calm = made(thin, paper="ledger", gatherings={"count": 5, "folios": 12})
    assert "swell-large" not in rules(calm)


def test_pressing_that_was_measured_replaces_the_usual_factor() -> None:
    pressed = made(paper="ledger", pressed="95 %")
    assert value(pressed, "leaves.thickness") == pytest.approx(80 * 0.1 * 0.95)


def test_pasted_in_matter_opens_the_fore_edge_and_stubs_close_it() -> None:
    inserts = {"each": "0.5 mm", "pages": 40}
    result = made(inserts=inserts)
    assert value(result, "fore_edge_filled") == pytest.approx(value(result, "block.fore_edge") + 20)
    wanted = value(result, "stubs_more")
    assert wanted > 0 and "fore-edge-gapes" in rules(result)
    stubbed = made(inserts={**inserts, "stubs": int(wanted)})
    assert value(stubbed, "stubs_more") == 0 and "fore-edge-gapes" not in rules(stubbed)


def test_the_block_weighs_its_leaves_and_end_papers() -> None:
    result = made()
    leaves = 80 * 150 * 205 * 90e-6
    assert value(result, "mass") == pytest.approx(leaves + value(result, "end_papers.mass"))


def test_a_thread_nobody_measured_is_said_to_be_assumed() -> None:
    assert "thread-assumed" not in rules(made())
    assert "thread-assumed" in rules(made(sewing={"use": "tapes"}))
    bare = {"linen": {"size": None, "material": None}}
    assert "thread-assumed" in rules(made(bare))
    measured = {"linen": {"size": None, "diameter": "0.5 mm"}}
    assert value(made(measured), "thread.diameter") == 0.5


def test_swell_is_held_against_the_whole_fore_edge() -> None:
    """End-papers stand at the fore-edge too: the share is of both, and then of the readings."""
    result = made()
    (told,) = [one for one in result.problems if one.rule == "swell-large"]
    share = value(result, "swell") / value(result, "block.fore_edge")
    assert f"{share:.0%} of the {value(result, 'block.fore_edge'):.1f}" in told.text
    straight = {"spine": "12.4 mm", "fore_edge": "12 mm"}
    assert "swell-large" not in rules(made(top={"measured": {"block": straight}}))
    wedge = made(top={"measured": {"block": {"spine": "17 mm", "fore_edge": "12 mm"}}})
    (told,) = [one for one in wedge.problems if one.rule == "swell-large"]
    assert "by 5 mm, 42% of the 12 mm" in told.text and told.severity.value == "warning"


def test_swell_that_is_wanted_is_not_reported() -> None:
    inserts = {"each": "1 mm", "pages": 4}
    assert "swell-large" not in rules(made(inserts=inserts))
