"""One sheet a stage: its gates, pieces, steps, numbers and cautions."""

from __future__ import annotations

from foredge.contract import Build, Stage, StageResult
from foredge.emit.cautions import digest
from foredge.emit.escape import escape
from foredge.emit.gates import gate_views
from foredge.emit.markdown import explain_command
from foredge.emit.numbers import stage_numbers
from foredge.emit.render import render
from foredge.emit.words import Words
from foredge.emit.work import PartView, parts, piece_row, step_numbers


class StageSheets:
    """``stages/<stage>.md``."""

    kind = "emitter"
    name = "stage-sheets"
    title = "One sheet a stage in Markdown"

    def emit(self, build: Build) -> dict[str, bytes]:
        """A sheet for each stage that has anything to say."""
        work = parts(build)
        return {
            f"stages/{stage.name}.md": _sheet(build, stage, result, work)
            for stage, result in build.stages
            if result.operations or result.pieces
        }


def _sheet(build: Build, stage: Stage, result: StageResult, work: tuple[PartView, ...]) -> bytes:
    numbers = step_numbers(build)
    titles = {one.name: escape(one.title) for one, _ in build.stages}
    mine = {gate.id for gate in result.gates}
    words = Words(build)
    order = [operation for operation in build.order if operation.stage == stage.name]
    return render(
        "stage.md.j2",
        title=escape(build.book.title),
        stage=escape(stage.title),
        after=[titles[name] for name in stage.needs if name in titles],
        file_name=explain_command(build),
        gates=[gate for gate in gate_views(build, numbers) if gate.id in mine],
        pieces=[piece_row(words, piece) for piece in result.pieces],
        steps=[step for part in work if part.stage == stage.name for step in part.steps],
        numbers=stage_numbers(build, stage.title, result),
        digest=digest(build, [(numbers[one.id], one.cautions) for one in order]),
    )
