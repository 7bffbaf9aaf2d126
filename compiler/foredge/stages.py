"""Run the stages in the order of their needs, and do not trust what comes back."""

from __future__ import annotations

import math
import traceback
from collections.abc import Iterable, Sequence
from pathlib import Path

from foredge.contract import (
    Book,
    Problem,
    Quantity,
    Stage,
    StageResult,
    Upstream,
    error,
)
from foredge.contract.work import Operation
from foredge.provenance import Prepared, cared_for
from foredge.tables import load_tables

_CORE = Path(__file__).parent

Ran = tuple[tuple[Stage, StageResult], ...]


def run_stages(stages: Sequence[Stage], book: Book) -> tuple[Ran, list[Problem]]:
    """Each stage with its result. An exception is one problem, and the run stops there."""
    ran: list[tuple[Stage, StageResult]] = []
    problems: list[Problem] = []
    prepared: Prepared = {}
    for stage in stages:
        known = tuple((done.name, result) for done, result in ran if done.name in stage.needs)
        try:
            result = stage.run(book, Upstream(known))
        except Exception as failure:
            problems.append(_failed(stage, failure))
            break
        faults = verify(
            stage, result, (quantity for _, done in ran for quantity in done.quantities)
        )
        problems += result.problems
        problems += faults
        if faults:
            break
        result, prepared = cared_for(book, stage, result, prepared)
        ran.append((stage, result))
    return tuple(ran), problems


def _failed(stage: Stage, failure: Exception) -> Problem:
    file, line = _place(failure)
    return error(
        (stage.section,),
        f"the stage '{stage.name}' failed in {file}, line {line}: "
        f"{type(failure).__name__}: {failure}",
        "plugin-failed",
        remedy="This is a fault in the plugin, not in the spec; report it to whoever made it",
        on_key=True,
    )


def _place(failure: Exception) -> tuple[str, int]:
    """Folder and file, and the line, where the plugin's own code failed or called what failed."""
    frames = [
        (Path(frame.filename), frame.lineno or 0)
        for frame in traceback.extract_tb(failure.__traceback__)
    ]
    outside = [frame for frame in frames if not frame[0].is_relative_to(_CORE)]
    file, line = (outside or frames)[-1]
    return f"{file.parent.name}/{file.name}", line


def verify(stage: Stage, result: StageResult, known: Iterable[Quantity]) -> list[Problem]:
    """What is wrong with a stage's result: names, values, operations of another stage."""
    names = {quantity.name for quantity in known}
    texts: list[str] = []
    for quantity in result.quantities:
        texts += _faults_of(stage, quantity, names)
        names.add(quantity.name)
    texts += _foreign(stage, result.operations)
    texts += _unknown(result)
    for piece in result.pieces:
        if any(
            not math.isfinite(size.value) or size.value <= 0 for size in (piece.width, piece.height)
        ):
            texts.append(
                f"the piece '{piece.name}' would be {piece.width.value:g} by "
                f"{piece.height.value:g} mm"
            )
    return [
        error((stage.section,), f"the stage '{stage.name}': {text}", "plugin-result", on_key=True)
        for text in texts
    ]


def _faults_of(stage: Stage, quantity: Quantity, names: set[str | None]) -> list[str]:
    if quantity.name is None:
        return ["a quantity without a name"]
    texts = []
    if not quantity.name.startswith(f"{stage.prefix}."):
        texts.append(f"'{quantity.name}' does not start with '{stage.prefix}.'")
    if quantity.name in names:
        texts.append(f"'{quantity.name}' is there twice")
    if not math.isfinite(quantity.value):
        texts.append(f"'{quantity.name}' is not a finite number")
    return texts


def _unknown(result: StageResult) -> list[str]:
    """Pieces and cautions that an operation names and nobody knows."""
    pieces = {piece.name for piece in result.pieces}
    cautions = load_tables().names("cautions")
    texts = []
    for operation in result.operations:
        for what, names, known in (
            ("piece", operation.pieces, pieces),
            ("caution", operation.cautions, cautions),
        ):
            for name in names:
                if name not in known:
                    texts.append(f"the operation '{operation.id}' names an unknown {what} '{name}'")
    return texts


def _foreign(stage: Stage, operations: Sequence[Operation]) -> list[str]:
    return [
        f"the operation '{operation.id}' does not start with '{stage.name}.'"
        for operation in operations
        if operation.stage != stage.name
    ]
