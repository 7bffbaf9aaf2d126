"""Edge treatments: areas, amounts, place in the order, and the flame that must be accepted."""

from __future__ import annotations

import math

import pytest

from case_books import CASE, HEAD, mm
from finishing_books import registry
from foredge.contract import EdgeJob, StageResult, Upstream
from foredge.plan.order import order
from foredge.testing import book_from, check_plugin, check_result, registry_of

NAMES = ("colour", "gilt", "scorched", "sprinkled")
WIDTH, HEIGHT, THICK = 150.0, 205.0, 10.0


def block(*edges: str, trim: str = "") -> str:
    listed = "".join(f"    - {edge}\n" for edge in edges)
    return (
        f"{HEAD}text_block:\n  paper: paper\n  leaf: {{width: 150 mm, height: 205 mm}}\n"
        f"  gatherings: {{count: 10, folios: 3}}\n{trim}  edges:\n{listed}{CASE}"
    )


def treated(edge: str, *, cut: tuple[str, ...] = ("head", "tail", "fore-edge")) -> StageResult:
    """What the one edge treatment of a book makes of a block of 150 by 205 by 10 mm."""
    book = book_from(block(edge), registry=registry())
    (part,) = book.sections["text_block"].edges
    sizes = (mm(WIDTH, "width"), mm(HEIGHT, "height"), mm(THICK, "thickness"))
    result: StageResult = part.plugin.treat(EdgeJob(book, part, *sizes, "text-block.trim", cut))
    check_result(result)
    return result


def worked(*edges: str, trim: str = "") -> tuple[list[str], StageResult]:
    """The whole text block: operations in order of work, and the stage's result."""
    book = book_from(block(*edges, trim=trim), registry=registry())
    found = registry().find("stage", "text-block")
    assert found is not None
    result = found.plugin.run(book, Upstream())
    work, problems = order(result.operations, ("text-block",), result.gates)
    assert not problems
    return [one.id.removeprefix("text-block.") for one in work], result


@pytest.mark.parametrize("name", NAMES)
def test_it_keeps_the_contract(name: str) -> None:
    found = registry_of().find("edge", name)
    assert found is not None
    check_plugin(found.plugin)


@pytest.mark.parametrize(
    ("edges", "length"),
    [
        ("[head]", WIDTH),
        ("[fore-edge]", HEIGHT),
        ("[head, tail]", 2 * WIDTH),
        ("[head, tail, fore-edge]", 2 * WIDTH + HEIGHT),
    ],
)
def test_the_area_is_length_by_thickness(edges: str, length: float) -> None:
    result = treated(f"{{use: colour, edges: {edges}}}")
    (area,) = [q for q in result.quantities if (q.name or "").endswith(".area")]
    assert area.value == pytest.approx(length * THICK)


def test_thin_colour_is_one_part_to_two_of_water() -> None:
    result = treated("{use: colour, coats: 30}")  # enough to be more than the least there is
    amount = {(q.name or "").rpartition(".")[2]: q.value for q in result.quantities}
    assert amount["mixed"] == pytest.approx((2 * WIDTH + HEIGHT) * THICK * 0.06 * 30 * 1.3)
    assert amount["paint"] == pytest.approx(amount["mixed"] / 3)


def test_drops_cover_a_share_of_the_edge() -> None:
    amount = {
        use: next(q.value for q in treated(f"{{use: {use}, coats: 50}}").quantities
                  if (q.name or "").endswith(".mixed"))
        for use in ("colour", "sprinkled")
    }  # fmt: skip
    assert amount["sprinkled"] == pytest.approx(0.3 * amount["colour"])


def test_leaf_is_cut_into_strips_a_little_wider_than_the_edge() -> None:
    # Strips of 10 + 2 x 5 mm: four from a leaf of 80 mm, each showing 75 mm of its length.
    result = treated("{use: gilt, leaf: gold}")
    (leaves,) = [q for q in result.quantities if (q.name or "").endswith(".leaves")]
    strips = 2 * math.ceil(WIDTH / 75) + math.ceil(HEIGHT / 75)
    assert leaves.value == math.ceil(strips / 4 * 1.15)


def test_leaf_on_a_rough_edge_is_warned_of() -> None:
    assert treated("{use: gilt}").problems == ()
    (problem,) = treated("{use: gilt}", cut=("head",)).problems
    assert problem.rule == "edge-uneven" and "tail and fore-edge" in problem.text


def test_scorching_without_consent_stops_with_the_safer_ways() -> None:
    result = treated("{use: scorched}")
    (problem,) = result.problems
    assert problem.severity.value == "error" and problem.rule == "flame-not-accepted"
    assert "colour" in problem.remedy and "sprinkled" in problem.remedy
    assert result.operations == ()


def test_scorching_carries_its_caution_and_is_done_outdoors() -> None:
    scorch, brush = treated("{use: scorched, flame: accepted}", cut=()).operations
    assert scorch.outdoors and "flame" in scorch.cautions
    assert scorch.wait is not None and scorch.wait.value == 3600
    assert brush.after == ("text-block.trim", scorch.id)


def test_scorching_comes_before_any_glue_and_its_edges_stay_untrimmed() -> None:
    work, result = worked(
        "{use: scorched, flame: accepted}", "{use: colour}", trim="  trim: none\n"
    )
    place = {name: number for number, name in enumerate(work)}
    assert place["sew"] < place["scorch-scorched-edges"] < place["square-block"]
    assert place["square-block"] < place["glue-spine"] < place["brush-scorched-edges"]
    assert place["brush-scorched-edges"] < place["colour-colour-edges"]
    assert result.gates[-1].after == "text-block.colour-colour-edges"
    assert not [one for one in result.problems if one.rule == "scorch-cut-off"]


def test_a_knife_that_takes_the_brown_off_is_warned_of() -> None:
    _, result = worked("{use: scorched, flame: accepted, edges: [head, fore-edge]}",
                       trim="  trim: {head: 0 mm, tail: 3 mm, fore_edge: 3 mm}\n")  # fmt: skip
    (problem,) = [one for one in result.problems if one.rule == "scorch-cut-off"]
    assert problem.text.startswith("fore-edge of the block")


@pytest.mark.parametrize("name", [one for one in NAMES if one != "scorched"])
def test_the_gate_is_taken_after_every_treatment(name: str) -> None:
    work, result = worked(f"{{use: {name}, edges: [head]}}", "{use: sprinkled, id: last}")
    assert result.gates[-1].after == "text-block.sprinkle-last"
    place = {one: number for number, one in enumerate(work)}
    assert place["trim"] < place["sprinkle-last"]


def test_edges_rest_on_no_gate() -> None:
    _, result = worked("{use: colour}", "{use: gilt, leaf: gold, id: shine}")
    edges = [q for q in result.quantities if (q.name or "").startswith("text_block.edges.")]
    assert edges and all(q.firm for q in edges)


@pytest.mark.parametrize(
    ("burner", "tool", "candle"),
    [
        ("", "small flame", False),
        (", burner: candle", "candle in a heavy holder", True),
        (", burner: torch", "small gas torch", True),
    ],
)
def test_what_gives_the_flame(burner: str, tool: str, candle: bool) -> None:
    result = treated(f"{{use: scorched, edges: [fore-edge], flame: accepted{burner}}}", cut=())
    scorch = result.operations[0]
    assert scorch.tools[0] == tool
    assert ("candle" in scorch.cautions) is candle
    assert "flame" in scorch.cautions
    if burner.endswith("candle"):
        assert any("Put the candle out" in step.template for step in scorch.steps)
