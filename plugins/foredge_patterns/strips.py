"""Strips side by side, from head to tail or across."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    Length,
    LengthOrZero,
    OrnamentJob,
    OrnamentResult,
    Piece,
    Problem,
    Quantity,
    Text,
    floor,
    no_ornament,
    number,
    say,
    stock_name,
)
from foredge_patterns.layout import Box, evenly
from foredge_patterns.options import PatternOptions
from foredge_patterns.ply import Ply, by_length, ply_of, strand_width
from foredge_patterns.region import Region, find_region, region_problems, too_large, too_many
from foredge_patterns.sheet import pattern_sheet
from foredge_patterns.work import Pattern, errors, laid, piece_of, sized, whole


class StripOptions(PatternOptions, frozen=True, kw_only=True, tag="strip-pattern"):
    """Strips of one width that do not cross."""

    stock: Annotated[
        str,
        stock_name("sheet", "board", "cloth", "tape", "thread"),
        Meta(description="What they are cut from."),
    ]
    width: (
        Annotated[Length, Meta(description="Width of a strip; a tape or thread has its own.")]
        | None
    ) = None
    gap: Annotated[LengthOrZero, Meta(description="Between two strips.")]
    along: Annotated[
        Literal["height", "width"], Meta(description="The side of the panel they run along.")
    ] = "height"


@dataclass(frozen=True, slots=True)
class StripPattern:
    """As many whole strips as the field holds; what is left over is shared between its sides."""

    kind: str = "embellishment"
    name: str = "strip-pattern"
    title: str = "Strip pattern"
    stage: str = "finishing"
    options: type[StripOptions] = StripOptions

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Strips, positions, pieces and work."""
        options: StripOptions = job.part.options
        region, ply = find_region(job), ply_of(job, options.stock)
        width, wrong = strand_width(job, ply)
        wrong = [*region_problems(job, region), *wrong]
        if width is None or errors(wrong):
            return no_ornament(job, wrong)
        high = options.along == "height"
        room, run = (region.width, region.height) if high else (region.height, region.width)
        wrong += too_large(job, region, *((width, run) if high else (run, width)))
        pitch = width + options.gap
        strips = floor((room - width) / pitch) + 1
        count = strips * region.faces
        wrong += too_many(job, count)
        if errors(wrong):
            return no_ornament(job, wrong)
        return _laid(job, region, ply, _Strips(width, pitch, strips, room, run, high), count, wrong)


@dataclass(frozen=True, slots=True)
class _Strips:
    """``room`` is the field across the strips, ``run`` along them; ``high``: head to tail."""

    width: Quantity
    pitch: Quantity
    number: Quantity
    room: Quantity
    run: Quantity
    high: bool

    def boxes(self) -> list[Box]:
        """Every strip of a field."""
        starts = evenly(
            self.room.value, self.width.value, self.pitch.value, round(self.number.value)
        )
        wide, run = self.width.value, self.run.value
        return [Box(at, 0.0, wide, run) if self.high else Box(0.0, at, run, wide) for at in starts]


def _laid(
    job: OrnamentJob,
    region: Region,
    ply: Ply,
    strips: _Strips,
    count: Quantity,
    wrong: list[Problem],
) -> OrnamentResult:
    length = sized(job, job.book.size(strips.run), "length", "length of a strip", "the field")
    total = whole(strips.number, job, "strips", "strips on one panel", "as many as go in whole")
    first = sized(
        job,
        (strips.room - strips.width - (strips.number - 1) * strips.pitch) / 2,
        "first",
        "field's edge to the first strip",
        "half of what is left",
    )
    glued = count * length * strips.width
    pieces: tuple[Piece, ...] = ()
    if ply.width is None:
        size = (strips.width, length)
        pieces = (piece_of(job, f"finishing.{job.key}.strip", "strip", count, size),)
    uses = () if ply.width is None else (by_length(job, count * length),)
    rings = tuple(box.ring for box in strips.boxes())
    pattern = Pattern(
        title="strips",
        region=region,
        ply=ply,
        count=count,
        glued=glued,
        covers=glued,
        layers=number(1),
        cut=(say("Cut {count} strips, {length} long.", count=count, length=length),),
        lay=_lay(strips, total, first),
        quantities=(total, first, length),
        drawing=pattern_sheet(job, region, "Strip pattern", rings),
        rings=rings,
        pieces=pieces,
        uses=uses,
        problems=tuple(wrong),
    )
    return laid(job, pattern)


def _lay(strips: _Strips, total: Quantity, first: Quantity) -> tuple[Text, ...]:
    way, edge = ("from head to tail", "spine side") if strips.high else ("across", "head")
    return (
        say("Lay {total} strips {way}.", total=total, way=way),
        say("Begin {first} from the field's {edge}; each strip starts {pitch} after the last.",
            first=first, edge=edge, pitch=strips.pitch),
    )  # fmt: skip


PLUGIN = StripPattern()
