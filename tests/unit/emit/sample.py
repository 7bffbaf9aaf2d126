"""A small Build made by hand: two stages, two gates, a blank, cautions, a drawing."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

from foredge.contract import (
    LENGTH,
    TIME,
    Book,
    Build,
    Circle,
    Diagnostic,
    Drawing,
    Gate,
    GrainArrow,
    Label,
    Line,
    Measured,
    Operation,
    Options,
    Origin,
    Piece,
    Quantity,
    Reading,
    Severity,
    Shape,
    Sheet,
    StageResult,
    Upstream,
    Use,
    count,
    leaf,
    maximum,
    merge,
    say,
)
from foredge.plan.order import order
from foredge.plan.shelf.ledger import plan_ledger
from foredge.problem import Span
from foredge.quantity import bands
from foredge.spec.yaml_reader import Positions
from foredge.tables import load_tables

FILE = "specs/tide-table.yaml"


@dataclass(frozen=True)
class FakeStage:
    """Only what emitters read of a stage."""

    name: str
    title: str
    section: str
    prefix: str
    needs: tuple[str, ...] = ()
    kind: str = "stage"
    options: type[Options] = Options

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        raise NotImplementedError


def spec(value: float, *path: str, text: str = "", **more: Any) -> Quantity:
    return leaf(value, LENGTH, ".".join(path), Origin("spec", path, text), **more)


def table(value: float, low: float, high: float, name: str, label: str) -> Quantity:
    origin = Origin("table", citation="common practice")
    return leaf(value, LENGTH, name, origin, low=low, high=high, label=label)


def minutes(value: float) -> Quantity:
    return leaf(value * 60, TIME, "time", Origin("default", citation="from memory"))


def number_of(value: int, name: str) -> Quantity:
    return count(value, name, Origin("spec", tuple(name.split("."))))


def book(title: str, display: str, readings: dict[str, Quantity]) -> Book:
    def nothing(*_: Any) -> Any:
        raise LookupError

    sheet = Sheet(
        width=spec(440, "stock", "chart-paper", "width"),
        height=spec(600, "stock", "chart-paper", "height"),
        grain="width",
        note="from the *chart* room",
    )
    return Book(
        title=title,
        copies=number_of(1, "copies"),
        display=display,
        step_mm=25.4 / 32 if display == "imperial" else 0.5,
        stock={"chart-paper": sheet},
        sections={},
        readings=readings,
        lookup=nothing,
        words=nothing,
        choose_part=nothing,
    )


def text_block(made: Book) -> StageResult:
    leaf_height = spec(205, "text_block", "leaf", "height", text="205 mm")
    leaf_width = spec(150, "text_block", "leaf", "width", text="150 mm")
    swell = table(2.0, 0.5, 4.5, "practice.swell.amount", "swell")
    paper = table(10.0, 9.0, 11.0, "paper.chart.thickness", "paper of the block")
    gathering = number_of(10, "text_block.gatherings").named(
        "text_block.gatherings", label="gatherings"
    )
    spine = made.measured(paper + swell, "G2", "block.spine", "block thickness at the spine")
    spine = spine.named("text_block.block.spine", rule="leaves and swell", source="common practice")
    trim = table(1.0, 0.0, 2.0, "practice.trim.amount", "trim")
    height = made.measured(leaf_height - trim + trim, "G2", "block.height", "block height")
    height = height.named("text_block.block.height", label="block height")
    folio = Piece(
        "text_block.folio",
        "folio",
        number_of(30, "folios"),
        made.size(2 * leaf_width),
        made.size(leaf_height),
        "height",
        stock="chart-paper",
    )
    lining = Piece(
        "text_block.lining",
        "spine lining",
        number_of(1, "linings"),
        made.blank(spine, spec(3, "text_block", "allowance")),
        made.size(leaf_height),
        "height",
        material="kraft paper",
        blank=True,
        trimmed_to="the width of the spine",
    )
    thread = (20 * height).named("text_block.thread", label="thread")
    return StageResult(
        quantities=(gathering, height, spine, thread),
        pieces=(folio, lining),
        operations=(
            Operation(
                "text-block.sew",
                "Sew the gatherings",
                (
                    say("Sew {n} gatherings with {thread} of thread.", n=gathering, thread=thread),
                    say("Use the {colour} thread.", colour="*dark* | red"),
                ),
                minutes(180),
                after=("text-block.fold",),
                cautions=("awl-needle",),
                uses=(Use("linen thread", thread, note="waxed"),),
                tools=("needle", "awl"),
            ),
            Operation(
                "text-block.fold",
                "Fold the folios",
                (say("Fold each folio along the {side}.", side="height"),),
                minutes(95),
                pieces=("text_block.folio",),
                cautions=("blade",),
                tools=("bone folder",),
            ),
            Operation(
                "text-block.press",
                "Press the block",
                (say("Put it under weights."),),
                minutes(5),
                after=("text-block.sew",),
                wait=minutes(12 * 60),
                waiting="the block dries under weights",
                pieces=("text_block.lining",),
            ),
        ),
        gates=(
            Gate(
                "G2",
                "The pressed block",
                "text-block.press",
                (
                    Reading("block.height", "block height", height),
                    Reading("block.spine", "thickness at the spine", spine),
                ),
                (say("Measure between two boards."),),
            ),
        ),
    )


def case(made: Book, block: StageResult) -> StageResult:
    height, spine = (block.quantity(f"text_block.block.{side}") for side in ("height", "spine"))
    square = spec(5, "case", "square", text="5 mm", label="square")
    card = table(3.1, 2.8, 3.4, "board.grey.thickness", "layers of card")
    board = made.measured(card, "G1", "board", "board").named(
        "case.board.thickness", label="board thickness"
    )
    board_height = made.size(height + 2 * square).named(
        "case.board.height",
        label="board height",
        rule="a square at head and tail",
        source="common practice",
    )
    joint = spec(6, "case", "joint") + board
    joint = joint + 2 * maximum(leaf(0, LENGTH, "none", Origin("constant")), square - 5 * board)
    width = made.size(spec(150, "text_block", "leaf", "width") + square - joint).named(
        "case.board.width", label="board width"
    )
    pieces = (Piece("case.board", "board", number_of(2, "boards"), width, board_height, "height"),)
    drawing = Drawing(
        "case-plan",
        "The case laid flat",
        190,
        130,
        (
            Line(((20, 20), (80, 20), (80, 110), (20, 110)), "cut", closed=True),
            Shape((((90, 20), (100, 20), (100, 110), (90, 110)),)),
            Circle((50, 65), 4, "guide"),
            Measured((20, 20), (80, 20), "149 mm"),
            GrainArrow((30, 65), 40, 90),
            Label((50, 90), "board <1>", anchor="middle"),
        ),
    )
    return StageResult(
        quantities=(board, board_height, width, (spine + board).named("case.spine.width")),
        pieces=pieces,
        operations=(
            Operation(
                "case.laminate",
                "Laminate the boards",
                (say("Glue the layers."),),
                minutes(20),
                wait=minutes(24 * 60),
                waiting="the boards dry under weights",
                cautions=("pva", "blade"),
                uses=(Use("white glue", table(0.1, 0.08, 0.12, "glue", "glue")),),
            ),
            Operation(
                "case.cut-boards",
                "Cut the boards",
                (say("Cut 2 boards, {width} wide.", width=width),),
                minutes(20),
                after=("case.laminate", "text-block.press"),
                stops_for=("G1", "G2"),
                pieces=("case.board",),
                cautions=("blade",),
            ),
        ),
        gates=(Gate("G1", "The board", "case.laminate", (Reading("board", "board", board),)),),
        drawings=(drawing,),
    )


def sample(
    title: str = "The Tide Table",
    display: str = "metric",
    measured: dict[str, float] | None = None,
) -> Build:
    readings = {
        key: leaf(
            value, LENGTH, f"measured.{key}", Origin("reading", ("measured", *key.split(".")))
        )
        for key, value in (measured or {}).items()
    }
    made = book(title, display, readings)
    block = text_block(made)
    cover = case(made, block)
    stages = (
        (FakeStage("text-block", "Text block", "text_block", "text_block"), block),
        (FakeStage("case", "Case", "case", "case", ("text-block",)), cover),
    )
    whole = merge((block, cover))
    operations, problems = order(whole.operations, ("text-block", "case"), whole.gates)
    assert not problems
    lines = {
        ("text_block", "leaf", "height"): 14,
        ("text_block", "leaf", "width"): 13,
        ("case", "square"): 31,
        ("measured", "block", "spine"): 60,
    }
    positions = {path: Span(FILE, line, 5) for path, line in lines.items()}
    build = Build(
        name="tide-table",
        file=FILE,
        book=made,
        stages=stages,
        whole=whole,
        order=operations,
        bands={
            quantity.name or "": band
            for quantity, band in zip(whole.quantities, bands(whole.quantities), strict=True)
        },
        positions=Positions({(): Span(FILE, 1, 1), **positions}, {}),
        tables=load_tables(),
        diagnostics=(
            Diagnostic(
                Span(FILE, 12, 14),
                Severity.WARNING,
                "the grain of 'chart-paper' runs across the spine",
                "grain-across-spine",
                consequence="pages will cockle at the gutter",
                remedy="Turn the folio",
            ),
        ),
    )
    ledger, _ = plan_ledger(build)
    known = {**build.bands, **ledger.bands}
    return replace(build, plan=replace(build.plan, ledger=ledger), bands=known)


def renamed(build: Build, name: str) -> Build:
    return replace(build, name=name)
