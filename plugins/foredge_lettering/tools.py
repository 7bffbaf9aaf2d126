"""What letters are drawn with: its line, its paint, and how small it may write."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import OrnamentJob, Problem, Quantity, cited, note, warning

_PAINT = {
    "paint-marker": "paint-marker",
    "fine-brush": "base-coat",
    "brush": "base-coat",
    "nozzle": "texture-paint",
}


@dataclass(frozen=True, slots=True)
class ToolFigures:
    """``stroke`` is the line it draws, ``paint`` a row of the paints table; ``raised``: a bead."""

    stroke: Quantity
    paint: str
    coats: Quantity
    raised: bool


def tool_figures(job: OrnamentJob) -> ToolFigures:
    """The tool named in the options."""
    options, book, key = job.part.options, job.book, job.key
    usual = book.default(f"letter-line-{options.tool}")
    said = options.stroke
    stroke = (usual if said is None else said).named(
        f"finishing.{key}.stroke",
        label="width of the letters' line",
        rule="what the tool draws" if said is None else "as decided",
        source=cited(usual) if said is None else "the maker's choice",
    )
    paint = options.paint or _PAINT[options.tool]
    coats = options.coats if options.coats is not None else book.table("paints", paint, "coats")
    if options.coats is None and options.tool == "nozzle":
        coats = book.default("letter-coats-nozzle")
    return ToolFigures(stroke, paint, coats, options.tool == "nozzle")


def legible(job: OrnamentJob, tool: ToolFigures, height: Quantity, filled: bool) -> list[Problem]:
    """What the tool draws badly at this height. All weak: warnings and notes."""
    options, book = job.part.options, job.book
    path, name = job.part.path, options.tool.replace("-", " ")
    problems: list[Problem] = []
    finest = book.default(f"letter-finest-{options.tool}")
    if tool.stroke.value < finest.value:
        problems.append(
            warning(
                (*path, "stroke"),
                f"a {name} hardly draws a line of {tool.stroke.value:.1f} mm; "
                f"{finest.value:.1f} mm is about its finest",
                "letter-stroke-fine",
                consequence="The line breaks or runs wide, and the letters close up",
                remedy="Try it on a scrap, or take a finer tool",
                source=cited(finest),
            )
        )
    least = tool.stroke * book.default("letter-painted") / book.default("letter-stroke")
    if height.value < least.value - 0.05:
        problems.append(
            warning(
                (*path, "height") if options.height is not None else path,
                f"capitals of {height.value:.1f} mm are small for a line of "
                f"{tool.stroke.value:.1f} mm; {least.value:.1f} mm or more stays open",
                "letter-small",
                consequence="The insides of the letters fill with paint",
                remedy="Make them larger, or take a finer tool",
                source=cited(book.practice("letter-painted")),
            )
        )
    thin = book.default("letter-stroke-share")
    if not filled and tool.stroke.value < thin.value * height.value:
        problems.append(
            note(
                (*path, "stroke") if options.stroke is not None else path,
                f"a line of {tool.stroke.value:.1f} mm is thin for capitals of "
                f"{height.value:.1f} mm; signs have {100 * thin.value:.0f} % of the height or more",
                "letter-thin",
                consequence="The letters look faint from across a room",
                remedy="Take a broader tool, or letters with double lines",
                source=cited(thin),
            )
        )
    return problems
