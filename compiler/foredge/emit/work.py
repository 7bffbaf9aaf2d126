"""The work in its order, cut into parts of one stage each, ready to be laid out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from foredge.contract import Build, Operation, Piece
from foredge.emit.cautions import Caution, caution
from foredge.emit.cutting import sheet_title
from foredge.emit.escape import escape
from foredge.emit.gates import Box, GateView, gate_views
from foredge.emit.words import Words, state_of
from foredge.spec.words import listed

GRAIN = {"width": "along the width", "height": "along the height", "any": "either way"}


@dataclass(frozen=True, slots=True)
class PieceRow:
    """A piece to cut, as a line of a table."""

    title: str
    count: str
    size: str
    grain: str
    source: str
    state: str


@dataclass(frozen=True, slots=True)
class StepView:
    """One operation. ``cautions`` tell whether they are met here for the first time.

    ``stop`` names the gates to be read before it, ``stop_boxes`` those of their readings
    that no step before it stopped for.
    """

    id: str
    number: str
    title: str
    timing: str
    done: str
    stop: str
    stop_boxes: tuple[Box, ...]
    tools: str
    uses: tuple[str, ...]
    pieces: tuple[PieceRow, ...]
    cutting: str
    lines: tuple[str, ...]
    cautions: tuple[tuple[Caution, bool], ...]
    gates: tuple[GateView, ...]


@dataclass(frozen=True, slots=True)
class PartView:
    """Consecutive operations of one stage."""

    number: int
    stage: str
    title: str
    steps: tuple[StepView, ...]


def step_numbers(build: Build) -> dict[str, str]:
    """Operation -> ``2.4``: the fourth step of the second part."""
    numbers: dict[str, str] = {}
    for part, operations in enumerate(_runs(build.order), start=1):
        for step, operation in enumerate(operations, start=1):
            numbers[operation.id] = f"{part}.{step}"
    return numbers


def parts(build: Build) -> tuple[PartView, ...]:
    """The whole work, in order."""
    numbers = step_numbers(build)
    maker = _Maker(build, numbers, gate_views(build, numbers))
    titles = {stage.name: escape(stage.title) for stage, _ in build.stages}
    seen: set[str] = set()
    views = []
    for number, operations in enumerate(_runs(build.order), start=1):
        stage = operations[0].stage
        title = titles.get(stage, stage) + (", continued" if stage in seen else "")
        seen.add(stage)
        steps = tuple(maker.step(operation) for operation in operations)
        views.append(PartView(number, stage, title, steps))
    return tuple(views)


def _runs(operations: Sequence[Operation]) -> list[list[Operation]]:
    runs: list[list[Operation]] = []
    for operation in operations:
        if not runs or runs[-1][0].stage != operation.stage:
            runs.append([])
        runs[-1].append(operation)
    return runs


def piece_row(words: Words, piece: Piece) -> PieceRow:
    """One piece as told to the maker."""
    source = piece.stock or piece.material
    title = piece.title + (f" ({piece.shape})" if piece.shape else "")
    return PieceRow(
        title=escape(title),
        count=words.number(piece.count),
        size=words.size(piece),
        grain=GRAIN[piece.grain],
        source=escape(source) or "your choice",
        state=_state(words, piece),
    )


def _state(words: Words, piece: Piece) -> str:
    if piece.blank:
        titles = {one.name: f"the {one.title.lower()}" for one in words.build.whole.pieces}
        goal = titles.get(piece.trimmed_to, piece.trimmed_to)
        trimmed = f" to {escape(goal)}" if goal else ""
        return f"blank: cut now, trim later{trimmed}"
    state = state_of(piece.count, piece.width, piece.height)
    return state if state == "firm" else f"{state}: do not cut"


class _Maker:
    """Makes step views in order; remembers which cautions have been told."""

    def __init__(self, build: Build, numbers: dict[str, str], gates: tuple[GateView, ...]) -> None:
        self._build = build
        self._words = Words(build)
        self._numbers = numbers
        self._gates = gates
        self._pieces = {piece.name: piece for piece in build.whole.pieces}
        self._told: set[str] = set()
        self._boxed: set[str] = set()

    def step(self, operation: Operation) -> StepView:
        """The view of one operation."""
        waits_for = [gate for gate in self._gates if gate.id in operation.stops_for]
        boxes = tuple(box for gate in waits_for if gate.id not in self._boxed for box in gate.open)
        self._boxed.update(gate.id for gate in waits_for)
        rows = [self._pieces[name] for name in operation.pieces if name in self._pieces]
        return StepView(
            id=operation.id,
            number=self._numbers[operation.id],
            title=escape(operation.title),
            timing=self._timing(operation),
            done=self._done(operation),
            stop=_stop([gate for gate in waits_for if gate.open]),
            stop_boxes=boxes,
            tools=", ".join(escape(tool) for tool in operation.tools),
            uses=tuple(self._use(operation)),
            pieces=tuple(piece_row(self._words, piece) for piece in rows),
            cutting=self._cutting(operation),
            lines=tuple(self._words.text(line) for line in operation.steps),
            cautions=tuple(self._cautions(operation)),
            gates=tuple(gate for gate in self._gates if gate.after == operation.id),
        )

    def _cutting(self, operation: Operation) -> str:
        """The sheets of the cutting plan that this operation's pieces come from."""
        named = set(operation.pieces)
        sheets = [
            sheet_title(sheet)
            for sheet in self._build.plan.cutting.sheets
            if named & {placement.piece.name for placement in sheet.layout.placements}
        ]
        return escape("; ".join(dict.fromkeys(sheets)))

    def _timing(self, operation: Operation) -> str:
        hands_on = f"hands-on {self._words.time(operation.hands_on)}"
        place = ", outdoors" if operation.outdoors else ""
        if operation.wait is None or operation.wait.value <= 0:
            return f"{hands_on}{place}, then nothing to wait for"
        reason = f": {escape(operation.waiting)}" if operation.waiting else ""
        return f"{hands_on}{place}, then {self._words.time(operation.wait)}{reason}"

    def _done(self, operation: Operation) -> str:
        when = self._build.book.done.get(operation.id)
        return "" if when is None else f"done {escape(when)}".rstrip()

    def _use(self, operation: Operation) -> list[str]:
        return [
            f"{escape(use.material)} {self._words.number(use.amount)}" for use in operation.uses
        ]

    def _cautions(self, operation: Operation) -> list[tuple[Caution, bool]]:
        found = []
        for name in dict.fromkeys(operation.cautions):
            found.append((caution(self._build, name), name not in self._told))
            self._told.add(name)
        return sorted(found, key=lambda entry: entry[0].gravity)


def _stop(gates: Sequence[GateView]) -> str:
    if not gates:
        return ""
    names = "gate" if len(gates) == 1 else "gates"
    return f"{names} {listed(gate.id for gate in gates)}"
