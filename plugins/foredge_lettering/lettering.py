"""Lettering: text on a panel or the spine, set to fit, with a trace sheet at full size."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from foredge.contract import (
    OrnamentJob,
    OrnamentResult,
    Problem,
    StageResult,
    Stuff,
    error,
    no_ornament,
)
from foredge_lettering.fit import Fit, fit_text
from foredge_lettering.hershey import StrokeSet
from foredge_lettering.options import LetteringOptions
from foredge_lettering.place import Place, find_place, place_problems
from foredge_lettering.seen import letters_seen
from foredge_lettering.setting import Setting, break_text, missing, set_lines
from foredge_lettering.tools import ToolFigures, legible, tool_figures
from foredge_lettering.trace import Sheet, trace_sheets
from foredge_lettering.typeface import FontUnreadable, Typeface
from foredge_lettering.work import amounts, operations

if TYPE_CHECKING:
    from foredge_lettering.outline import OutlineFont

TOLERANCE = 0.02
"""mm that a polyline may leave the curve of a letter."""

TALLEST = 200.0
"""mm: no capitals stand higher on a book; curves are flattened finely enough for these."""


class BadText(Exception):
    """The text cannot be set; ``problems`` say why."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__()
        self.problems = problems


@dataclass(frozen=True, slots=True)
class Lettering:
    """Single-stroke letters for pen, brush and nozzle, or the outlines of the maker's own font."""

    kind: str = "embellishment"
    name: str = "lettering"
    title: str = "Lettering"
    stage: str = "finishing"
    options: type[LetteringOptions] = LetteringOptions

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Text set to its box: trace sheets, line, paint, and the work."""
        place = find_place(job)
        wrong = place_problems(job, place)
        try:
            if any(problem.severity.value == "error" for problem in wrong):
                raise BadText(*wrong)
            face = _typeface(job)
            setting = _set(job, place, face)
        except BadText as failure:
            return no_ornament(job, failure.problems)
        tool = tool_figures(job)
        fit = fit_text(job, place, setting, tool.stroke, face.citation)
        if fit.problems:
            return no_ornament(job, fit.problems)
        weak = (*wrong, *legible(job, tool, fit.height, setting.filled))
        return _made(job, place, setting, tool, fit, face.citation, weak)


def _made(
    job: OrnamentJob,
    place: Place,
    setting: Setting,
    tool: ToolFigures,
    fit: Fit,
    citation: str,
    problems: tuple[Problem, ...],
) -> OrnamentResult:
    made = amounts(job, fit, setting, tool, citation)
    work, done, close = operations(job, place, fit, setting, tool, made)
    options = job.part.options
    sheet = Sheet(
        key=job.key,
        title=" / ".join(row.text for row in setting.rows if row.text),
        panel="spine" if options.on == "spine" else f"{options.on} board",
        place=place,
        setting=setting,
        height=fit.height.value,
        stroke=0.0 if setting.filled else tool.stroke.value,
        align=options.align,
        unit="in" if job.book.display == "imperial" else "mm",
    )
    told = StageResult(
        quantities=(tool.stroke, *fit.quantities, *made.quantities),
        drawings=trace_sheets(sheet),
        looks=(letters_seen(sheet, options.on, Stuff(options.colour or "", tool.paint)),),
        problems=problems,
    )
    return OrnamentResult(told + work, options.on, made.thickness, made.covers, done, close)


def _typeface(job: OrnamentJob) -> Typeface:
    options = job.part.options
    if options.font is None:
        return StrokeSet(options.letters)
    tallest = options.height.value if options.height is not None else TALLEST
    return _from_file(job, TOLERANCE / max(tallest, 1.0))


def _from_file(job: OrnamentJob, tolerance: float) -> OutlineFont:
    from foredge_lettering.outline import OutlineFont  # heavy: only where a spec names a file

    font = job.part.options.font
    try:
        return OutlineFont(font.path, font.data, tolerance)
    except FontUnreadable as failure:
        raise BadText(_unreadable(job, failure)) from failure


def _unreadable(job: OrnamentJob, failure: Exception) -> Problem:
    font = job.part.options.font
    return error(
        (*job.part.path, "font"),
        f"'{font.path}' cannot be read as a font: {failure}",
        "font-unreadable",
        remedy="Give a TrueType or OpenType file (.ttf or .otf), or use the built-in letters",
    )


def _lines(job: OrnamentJob) -> tuple[str, ...]:
    text = job.part.options.text
    lines = text.split("\n") if isinstance(text, str) else text
    kept = [line.rstrip() for line in lines]
    while kept and not kept[-1]:
        kept.pop()
    if not any(line.strip() for line in kept):
        raise BadText(
            error((*job.part.path, "text"), "there is no text to be lettered", "lettering-empty")
        )
    return tuple(kept)


def _set(job: OrnamentJob, place: Place, face: Typeface) -> Setting:
    options, book = job.part.options, job.book
    lines = _lines(job)
    tracking = options.tracking.value if options.tracking is not None else 0.0
    asked = options.leading if options.leading is not None else book.default("letter-leading")
    try:
        lacking = missing(lines, face)
        if lacking:
            raise BadText(*(_missing(job, *one, len(lines)) for one in lacking))
        if options.breaks == "to-fit":
            box = (place.along.value, place.deep.value)
            return _inked(job, break_text(" ".join(lines), face, tracking, asked.value, box))
        return _inked(job, set_lines(lines, face, tracking, asked.value))
    except FontUnreadable as failure:
        raise BadText(_unreadable(job, failure)) from failure


def _inked(job: OrnamentJob, setting: Setting) -> Setting:
    """``setting``, unless nothing of its letters shows."""
    if setting.letters:
        return setting
    raise BadText(
        error((*job.part.path, "text"), "the font draws nothing for this text", "lettering-empty")
    )


def _missing(job: OrnamentJob, line: int, char: str, lines: int) -> Problem:
    options = job.part.options
    which = f"the letters '{options.letters}' have" if options.font is None else (
        f"'{options.font.path}' has"
    )  # fmt: skip
    in_line = f" in line {line}" if lines > 1 else ""
    shown = f"'{char}'" if char.isprintable() else "letter for a character that does not show"
    return error(
        (*job.part.path, "text"),
        f"{which} no {shown} (U+{ord(char):04X}), which stands{in_line or ' in the text'}",
        "lettering-missing-letter",
        remedy="Write it another way" if options.font is not None else
        "Write it another way, or give a font file of your own that has it",
    )  # fmt: skip


PLUGIN = Lettering()
