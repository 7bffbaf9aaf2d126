"""The build sheet: what the maker takes to the bench."""

from __future__ import annotations

from foredge.contract import Build
from foredge.display import show
from foredge.emit.cautions import digest
from foredge.emit.cutting import cut_views
from foredge.emit.cutting_aims import aim_lines
from foredge.emit.escape import code, escape
from foredge.emit.evenings import evening_views
from foredge.emit.gates import gate_views
from foredge.emit.materials import cut_from, tools
from foredge.emit.moisture import moisture_view
from foredge.emit.money import cost_view
from foredge.emit.numbers import stage_numbers
from foredge.emit.overview import consents, glance, remarks, troubles
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.render import render
from foredge.emit.shopping import ledger_rows, shopping
from foredge.emit.svg import file_name
from foredge.emit.work import parts, step_numbers
from foredge.spec.words import listed


class BuildSheet:
    """``build-sheet.md``."""

    kind = "emitter"
    name = "build-sheet"
    title = "Build sheet in Markdown"

    def emit(self, build: Build) -> dict[str, bytes]:
        """The whole book on one sheet, the work in its true order."""
        numbers = step_numbers(build)
        gates = gate_views(build, numbers)
        steps = [(numbers[operation.id], operation.cautions) for operation in build.order]
        content = render(
            "build-sheet.md.j2",
            title=escape(build.book.title),
            file=code(build.shown(build.file)),
            file_name=explain_command(build),
            glance=glance(build),
            remarks=remarks(build),
            gates=gates,
            open_gates=listed(gate.id for gate in gates if gate.open),
            troubles=troubles(build),
            consents=consents(build),
            cut_from=cut_from(build),
            cut_sheets=cut_views(build),
            cut_aims=aim_lines(build),
            ledger=ledger_rows(build),
            copies=show(build.book.copies),
            shopping=shopping(build),
            cost=cost_view(build),
            tools=tools(build),
            parts=parts(build),
            work=evening_views(build),
            moisture=moisture_view(build),
            numbers=[
                stage_numbers(build, stage.title, result)
                for stage, result in build.stages
                if result.quantities and result.operations
            ],
            digest=digest(build, steps),
            drawings=[
                {"title": escape(drawing.title), "name": file_name(drawing)}
                for drawing in all_drawings(build)
            ],
        )
        return {"build-sheet.md": content}


def explain_command(build: Build) -> str:
    """The command that explains a number of this build."""
    return code(f"foredge explain {build.shown(build.file)}")
