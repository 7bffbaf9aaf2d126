"""The work in its order, what is cut for it, and what must hold for every operation."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Any

import pytest

from foredge.contract import Line, Operation, Quantity, StageResult
from foredge.plan.order import order
from foredge.quantity import Program
from foredge.tables import load_tables
from foredge_stages.text_block.drawings import MOST_FOLIOS
from text_block_books import band_of, errors, made, quantity, rules, value

WAYS: tuple[dict[str, Any], ...] = (
    {},
    {"sewing": {"use": "link-stitch", "thread": "linen"}, "end_papers": {"use": "tipped"}},
    {"end_papers": {"use": "cloth-jointed"}, "trim": "none"},
    {"end_papers": {"use": "sewn", "way": "hooked"}, "edges_torn": True},
    {"lining": {"layers": 0}, "inserts": {"each": "0.3 mm", "pages": 20, "stubs": 4}},
    {"folded": 2, "gatherings": {"pages": 100, "shorter": [3]}, "sewing": {"use": "link-stitch"}},
)


@pytest.fixture(params=WAYS, ids=range(len(WAYS)))
def result(request: pytest.FixtureRequest) -> StageResult:
    return made(**request.param)


def operation(result: StageResult, verb: str) -> Operation:
    return next(o for o in result.operations if o.id == f"text-block.{verb}")


def amounts(result: StageResult, work: Operation) -> Iterator[Quantity]:
    """Every number an operation uses: in its steps, its pieces, its materials, its times."""
    for step in work.steps:
        yield from step.quantities()
    for piece in result.pieces:
        if piece.name in work.pieces:
            yield from (piece.width, piece.height, piece.count)
    yield from (use.amount for use in work.uses)
    yield from (wetting.water for wetting in work.wettings if wetting.water is not None)
    yield work.hands_on


def in_order(result: StageResult) -> tuple[Operation, ...]:
    work, problems = order(result.operations, ("text-block",), result.gates)
    assert not problems
    return work


def test_the_order_of_work_is_sound(result: StageResult) -> None:
    ids = [work.id for work in in_order(result)]
    wanted = ["check-grain", "cut-folios", "fold-folios", "collate-gatherings",
              "press-gatherings", "punch", "cut-thread", "sew", "square-block", "glue-spine",
              "line-spine", "size-linings"]  # fmt: skip
    assert [i for i in ids if i.partition(".")[2] in wanted] == [f"text-block.{w}" for w in wanted]
    assert ids[-1] == result.gates[0].after == dict(result.facts)["text_block.block_ready"]
    if "text-block.make-end-papers" in ids:
        assert ids.index("text-block.make-end-papers") < ids.index("text-block.punch")
    if "text-block.tip-end-papers" in ids:
        assert ids.index("text-block.sew") < ids.index("text-block.tip-end-papers")
        assert ids.index("text-block.tip-end-papers") < ids.index("text-block.square-block")


def test_nothing_before_g2_rests_on_its_reading(result: StageResult) -> None:
    """All of the stage's work lies before G2, so none of it may know the reading."""
    for work in in_order(result):
        for amount in amounts(result, work):
            assert "G2" not in amount.gates, (work.id, amount)
    # ... and the sizes after it do rest on it.
    assert quantity(result, "super.width").gates == {"G2"}


def test_only_blanks_look_at_what_the_gate_will_say(result: StageResult) -> None:
    for piece in result.pieces:
        for side in (piece.width, piece.height):
            seen = Program([side]).nodes
            behind = side.op == "blank" and any(node.op == "gate" for node in _behind(side))
            assert behind == (side.op == "blank"), piece.name
            if side.op != "blank":
                assert not any(node.op == "gate" for node in seen), piece.name
        assert piece.blank == (piece.width.op == "blank")


def _behind(root: Quantity) -> Iterator[Quantity]:
    for arg in root.args:
        yield arg
        yield from _behind(arg)


def test_a_blank_reaches_past_the_high_end_of_its_band(result: StageResult) -> None:
    piece = next(p for p in result.pieces if p.name == "text_block.super")
    assert piece.width.value > band_of(result, "super.width").high
    assert piece.trimmed_to


def test_sizes_of_pieces_are_whole_steps(result: StageResult) -> None:
    for piece in result.pieces:
        for side in (piece.width, piece.height):
            assert side.value * 2 == pytest.approx(round(side.value * 2)), piece.name
        assert piece.count.value == int(piece.count.value) > 0


def test_every_quantity_says_why_and_who_says_so(result: StageResult) -> None:
    names = [q.name for q in result.quantities]
    assert len(names) == len(set(names))
    for q in result.quantities:
        assert q.name and q.name.startswith("text_block.")
        assert q.rule and q.source and q.label, q.name
        assert "/work" not in q.source and "S1" not in q.source


def test_the_case_finds_what_it_reads(result: StageResult) -> None:
    for key in ("block.height", "block.width", "block.spine", "block.fore_edge", "leaf.thickness",
                "gatherings", "folios", "pages", "swell", "joint.end_paper_cloth", "joint.tapes",
                "joint.super", "paste_down.width", "paste_down.height", "super.width",
                "super.height", "mass", "offcuts.mass"):  # fmt: skip
        assert quantity(result, key).rule
    facts = dict(result.facts)
    assert facts["text_block.hinge"] in ("tipped", "sewn", "cloth")
    assert facts["text_block.supported"] in ("yes", "no")


def test_steps_read_at_the_bench(result: StageResult) -> None:
    known = {row.name for row in load_tables().rows("cautions")}
    for work in result.operations:
        assert work.steps and work.hands_on.value > 0
        assert set(work.cautions) <= known
        for step in work.steps:
            assert len(step.template) < 150, step.template
            assert not re.search(r"\}\s*(mm|cm|in|g|min)\b", step.template), step.template
            assert not re.search(r"[!_]|\bquantity\b|\bNone\b", step.template), step.template


def test_blades_and_awls_are_cautioned() -> None:
    result = made()
    assert "blade" in operation(result, "cut-folios").cautions
    assert "awl-needle" in operation(result, "punch").cautions
    assert "awl-needle" in operation(result, "sew").cautions
    assert "pva" in operation(result, "glue-spine").cautions


def test_more_gatherings_take_more_time() -> None:
    few, many = made(), made(gatherings={"count": 20, "folios": 4})
    for verb in ("fold-folios", "punch", "sew"):
        assert operation(many, verb).hands_on.value > operation(few, verb).hands_on.value


def test_an_untrimmed_block_is_not_trimmed() -> None:
    result = made(trim="none")
    assert not any(o.id == "text-block.trim" for o in result.operations)
    assert result.gates[0].after == "text-block.size-linings"


def test_the_template_has_every_station_at_its_place() -> None:
    result = made()
    (template,) = (d for d in result.drawings if d.name == "text-block-punching-template")
    assert template.true_scale
    top = min(y for item in template.items if isinstance(item, Line) for _, y in item.points)
    ticks = {
        item.points[0][1] - top
        for item in template.items
        if isinstance(item, Line) and item.role == "outline" and len(item.points) == 2
        and item.points[0][1] == item.points[1][1]
    }  # fmt: skip
    stations = {q.value for q in result.quantities if re.search(r"station\.\d+$", q.name or "")}
    assert ticks == stations and len(stations) == 8
    (cut,) = (i for i in template.items if isinstance(i, Line) and i.role == "cut")
    heights = [y for _, y in cut.points]
    assert max(heights) - min(heights) == value(result, "fold.height")


def test_a_gathering_too_thick_to_draw_is_not_drawn() -> None:
    thick = made(gatherings={"count": 1, "folios": MOST_FOLIOS + 1})
    assert not any(d.name == "text-block-gathering" for d in thick.drawings)


def test_a_super_short_of_the_kettles_warns() -> None:
    assert "super-off-kettles" in rules(made(super={"short": "14 mm"}))
    near = made(sewing={"use": "tapes", "thread": "linen", "kettle": "8 mm"})
    assert value(near, "super.short") == 6
    assert "super-off-kettles" not in rules(near)


def test_the_super_stays_inside_the_block() -> None:
    assert value(made(), "super.height") == 205 - 2 * 7
    assert not errors(made())


def test_imperial_pieces_fall_on_thirty_seconds() -> None:
    for piece in made(top={"display": "imperial"}).pieces:
        for side in (piece.width, piece.height):
            if piece.name != "text_block.tape":
                assert side.value * 32 / 25.4 == pytest.approx(round(side.value * 32 / 25.4))


def test_pieces_come_from_the_stock_that_the_spec_names() -> None:
    stock = {"kraft": {"kind": "sheet", "width": "500 mm", "height": "700 mm", "grain": "height"}}
    result = made(stock, end_papers={"use": "sewn", "paper": "kraft"}, lining={"stock": "kraft"})
    by_name = {piece.name: piece for piece in result.pieces}
    assert by_name["text_block.end_paper"].stock == "kraft"
    assert by_name["text_block.lining"].stock == "kraft"
    assert by_name["text_block.folio"].stock == "chart-paper"
