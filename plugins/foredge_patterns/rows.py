"""Overlapping rows: scales, shingles, feathers; each row lies over the one nearer the tail."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    Length,
    LengthOrZero,
    OrnamentJob,
    OrnamentResult,
    Problem,
    Quantity,
    Text,
    ceil,
    cited,
    error,
    floor,
    maximum,
    minimum,
    no_ornament,
    number,
    say,
    stock_name,
)
from foredge_patterns.layout import Box, Ring, evenly, scale_ring, within
from foredge_patterns.options import PatternOptions
from foredge_patterns.ply import ply_of
from foredge_patterns.region import Region, find_region, region_problems, too_large, too_many
from foredge_patterns.sheet import pattern_sheet
from foredge_patterns.work import Pattern, errors, laid, piece_of, sized, whole

Tip = Literal["square", "round", "pointed"]


class RowOptions(PatternOptions, frozen=True, kw_only=True, tag="row-pattern"):
    """Rows of equal pieces, every second one shifted by half a piece."""

    stock: Annotated[
        str, stock_name("sheet", "board", "cloth"), Meta(description="What they are cut from.")
    ]
    width: Annotated[Length, Meta(description="Width of a piece.")]
    height: Annotated[Length, Meta(description="Height of a piece, the covered part included.")]
    overlap: (
        Annotated[
            Length,
            Meta(description="How far a row lies over the next at least; a share if left out."),
        ]
        | None
    ) = None
    side_lap: (
        Annotated[LengthOrZero, Meta(description="How far a piece lies over the one beside it.")]
        | None
    ) = None
    tip: Annotated[Tip, Meta(description="The end of a piece that shows.")] = "round"
    ends: Annotated[
        Literal["cut", "whole"],
        Meta(description="Pieces at the field's sides: cut to it, or whole ones only."),
    ] = "cut"


@dataclass(frozen=True, slots=True)
class Rows:
    """``pitch`` from piece to piece, ``step`` from row to row. Rows count from the tail;
    ``full`` pieces lie in the first, third... row, ``shifted`` in the others."""

    width: Quantity
    height: Quantity
    pitch: Quantity
    step: Quantity
    rows: Quantity
    full: Quantity
    shifted: Quantity

    @property
    def count(self) -> Quantity:
        """Pieces on one face."""
        odd = ceil(self.rows / 2)
        return odd * self.full + (self.rows - odd) * self.shifted

    def boxes(self, region: Region) -> list[Box]:
        """Every piece in the order of laying: from the tail up, each row from the spine side."""
        wide, high = self.width.value, self.height.value
        placed: list[Box] = []
        for row in range(round(self.rows.value)):
            number_of = self.full if row % 2 == 0 else self.shifted
            top = region.height.value - high - row * self.step.value
            starts = evenly(region.width.value, wide, self.pitch.value, round(number_of.value))
            placed += [Box(x, top, wide, high) for x in starts]
        return placed


@dataclass(frozen=True, slots=True)
class RowPattern:
    """Laid from the tail up, so that every row covers the heads of the row below it."""

    kind: str = "embellishment"
    name: str = "row-pattern"
    title: str = "Overlapping rows"
    stage: str = "finishing"
    options: type[RowOptions] = RowOptions

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Rows, pieces, positions and work."""
        options: RowOptions = job.part.options
        region = find_region(job)
        wrong = region_problems(job, region) + _laps(job, options)
        wrong += too_large(job, region, options.width, options.height) if not wrong else []
        if errors(wrong):
            return no_ornament(job, wrong)
        rows = _rows(job, options, region)
        count = rows.count * region.faces
        wrong += too_many(job, count)
        if errors(wrong):
            return no_ornament(job, wrong)
        piece = piece_of(
            job, f"finishing.{job.key}.scale", "piece of a row", count,
            (rows.width, rows.height), _TIPS[options.tip],
        )  # fmt: skip
        pattern = Pattern(
            title="rows",
            region=region,
            ply=ply_of(job, options.stock),
            count=count,
            glued=count * rows.width * rows.height,
            covers=_covers(rows, region, options.ends == "cut"),
            layers=_layers(rows),
            cut=_cut(rows, count, options),
            lay=_lay(rows, options),
            quantities=(rows.rows, rows.full, rows.shifted, rows.step, rows.pitch),
            drawing=pattern_sheet(job, region, "Overlapping rows", _rings(rows, region, options)),
            rings=tuple(_rings(rows, region, options)),
            pieces=(piece,),
            problems=tuple(wrong),
        )
        return laid(job, pattern)


_TIPS = {
    "square": "",
    "round": "lower end rounded to a half circle",
    "pointed": "lower end cut to a point",
}


def _laps(job: OrnamentJob, options: RowOptions) -> list[Problem]:
    path = job.part.path
    wrong = [
        error(
            (*path, key),
            f"pieces {size.value:.1f} mm {word} cannot lie {lap.value:.1f} mm over one another",
            "pattern-overlap",
            remedy="Make the overlap smaller than the piece",
        )
        for key, lap, size, word in (
            ("overlap", options.overlap, options.height, "high"),
            ("side_lap", options.side_lap, options.width, "wide"),
        )
        if lap is not None and lap.value >= size.value
    ]
    if options.tip != "square" and options.height.value < options.width.value / 2:
        wrong.append(
            error(
                (*path, "tip"),
                f"a piece {options.width.value:.1f} mm wide and {options.height.value:.1f} mm high "
                f"has no room for a {options.tip} end",
                "pattern-tip",
                remedy="Make it at least half as high as it is wide, or the tip square",
            )
        )
    return wrong


def _rows(job: OrnamentJob, options: RowOptions, region: Region) -> Rows:
    wide, high = options.width, options.height
    share = job.book.default("pattern-lap")
    over = high * share if options.overlap is None else options.overlap
    pitch = wide if options.side_lap is None else wide - options.side_lap
    rows = ceil((region.height - high) / (high - over)) + 1
    # The rows are drawn together until they fill the field: the overlap only grows.
    step = (region.height - high) / maximum(rows - 1, number(1))
    if options.ends == "cut":
        full = ceil((region.width - wide) / pitch) + 1
        shifted, why = full + 1, "until the field is covered; the outer ones are cut to it"
    else:
        full = floor((region.width - wide) / pitch) + 1
        shifted, why = maximum(full - 1, number(1)), "as many as go in whole"
    return Rows(
        wide,
        high,
        sized(job, pitch, "pitch", "from one piece to the next", "width less what lies over"),
        sized(
            job, step, "step", "from one row to the next",
            "height less the overlap, drawn together until the rows fill the field",
            cited(share) if options.overlap is None else "the maker's choice",
        ),
        whole(rows, job, "rows", "rows", "until the field is covered from tail to head"),
        whole(full, job, "full", "pieces in the first, third ... row", why),
        whole(shifted, job, "shifted", "pieces in the second, fourth ... row",
              "half a piece further on: one more where the ends are cut, else one less"),
    )  # fmt: skip


def _layers(rows: Rows) -> Quantity:
    """Pieces on one another: those whose height, and whose width, reach over a point."""
    down = ceil(rows.height / maximum(rows.step, rows.height / 1000))
    return minimum(down, rows.rows) * minimum(ceil(rows.width / rows.pitch), rows.shifted)


def _covers(rows: Rows, region: Region, ends: bool) -> Quantity:
    """The field; where only whole pieces lie, what a full row is wide."""
    across = region.width if ends else (rows.full - 1) * rows.pitch + rows.width
    return region.faces * across * region.height


def _rings(rows: Rows, region: Region, options: RowOptions) -> list[Ring]:
    rings = [scale_ring(box, options.tip) for box in rows.boxes(region)]
    return [within(ring, region.width.value) for ring in rings]


def _cut(rows: Rows, count: Quantity, options: RowOptions) -> tuple[Text, ...]:
    plain = say(
        "Cut {count} pieces {width} by {height}.", count=count, width=rows.width, height=rows.height
    )
    if options.tip == "round":
        tip = say("Round one end of each: a half circle of {width} across.", width=rows.width)
        return plain, tip
    if options.tip == "pointed":
        return plain, say("Cut one end of each to a point, {width} deep.", width=rows.width / 2)
    return (plain,)


def _lay(rows: Rows, options: RowOptions) -> tuple[Text, ...]:
    ends = (
        "Cut what lies over the field's sides flush."
        if options.ends == "cut"
        else "Leave what is left over free, the same at both sides."
    )
    return (
        say("Rule {rows} lines across the field, {step} apart, its tail the first: where rows end.",
            rows=rows.rows, step=rows.step),
        say("Begin at the tail: {full} pieces, {pitch} from one to the next, in the middle.",
            full=rows.full, pitch=rows.pitch),
        say("The next row has {shifted}, shifted by half a piece; so on to the head.",
            shifted=rows.shifted),
        say("Glue only the upper part of each piece; the row above holds it down."),
        say(ends),
    )  # fmt: skip


PLUGIN = RowPattern()
