"""A net: two sets of strips that cross."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    LENGTH,
    RATIO,
    Angle,
    Length,
    Origin,
    OrnamentJob,
    OrnamentResult,
    Piece,
    Problem,
    Quantity,
    Text,
    Use,
    ceil,
    error,
    given,
    leaf,
    maximum,
    no_ornament,
    number,
    opaque,
    say,
    stock_name,
    total,
)
from foredge_patterns.layout import Ring, band, band_length, half_span
from foredge_patterns.options import PatternOptions
from foredge_patterns.ply import Ply, by_length, ply_of, strand_width
from foredge_patterns.region import Region, find_region, region_problems, too_many
from foredge_patterns.sheet import pattern_sheet
from foredge_patterns.work import Pattern, errors, laid, piece_of, sized, whole

LEAST, MOST = 10.0, 80.0
"""Degrees to the width: flatter or steeper, the two sets no longer make a net."""


_USUAL = leaf(45.0, RATIO, "net-pattern.angle", Origin("default", text="45 deg"), label="angle")


class NetOptions(PatternOptions, frozen=True, kw_only=True, tag="net-pattern"):
    """Strips, tape or cord laid to and fro at an angle."""

    stock: Annotated[
        str,
        stock_name("sheet", "board", "cloth", "tape", "thread"),
        Meta(description="What the strips are cut from."),
    ]
    width: (
        Annotated[Length, Meta(description="Width of a strip; a tape or thread has its own.")]
        | None
    ) = None
    spacing: Annotated[
        Length, Meta(description="From the middle of a strip to the middle of the next.")
    ]
    angle: (
        Annotated[
            Angle, Meta(description="Of the strips to the width of the panel; 45 deg if left out.")
        ]
        | None
    ) = None


@dataclass(frozen=True, slots=True)
class Net:
    """``each`` is how many strips one set has on one face: one through the middle of the field
    and pairs ``spacing`` apart on both sides. ``lengths`` are of the middle one, then of the
    first pair, and so on; the other set mirrors them."""

    width: Quantity
    spacing: Quantity
    angle: Quantity
    each: Quantity
    lengths: tuple[Quantity, ...]

    def rings(self, region: Region) -> list[Ring]:
        """Every strip on one face, cut to the field: one set, then the other."""
        wide, high = region.width.value, region.height.value
        pairs = len(self.lengths) - 1
        return [
            ring
            for sign in (1.0, -1.0)
            for place in range(-pairs, pairs + 1)
            if (
                ring := band(
                    wide,
                    high,
                    sign * self.angle.value,
                    self.width.value,
                    place * self.spacing.value,
                )
            )
        ]


@dataclass(frozen=True, slots=True)
class NetPattern:
    """Every strip whose middle crosses the field, cut to it."""

    kind: str = "embellishment"
    name: str = "net-pattern"
    title: str = "Net pattern"
    stage: str = "finishing"
    options: type[NetOptions] = NetOptions

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Strips, their lengths, positions, pieces and work."""
        options: NetOptions = job.part.options
        region, ply = find_region(job), ply_of(job, options.stock)
        width, strand = strand_width(job, ply)
        wrong = [*region_problems(job, region), *strand]
        if width is None or errors(wrong):
            return no_ornament(job, wrong)
        angle = _USUAL if options.angle is None else options.angle
        wrong += _crowded(job, options, width, angle)
        each = _each(region, options.spacing, angle)
        count = 2 * each * region.faces
        if errors(wrong) or errors(too_many(job, count)):
            return no_ornament(job, [*wrong, *too_many(job, count)])
        lengths = _lengths(job, region, options, width, angle, each)
        net = Net(width, options.spacing, angle, each, lengths)
        return _laid(job, region, ply, net, count, wrong)


def _crowded(
    job: OrnamentJob, options: NetOptions, width: Quantity, angle: Quantity
) -> list[Problem]:
    path, wrong = job.part.path, []
    if not LEAST <= angle.value <= MOST:
        text = f"at {angle.value:g} degrees the strips make no net; {LEAST:g} to {MOST:g} do"
        wrong.append(error((*path, "angle"), text, "net-angle", remedy="Take an angle between"))
    if options.spacing.value <= width.value:
        text = (
            f"strips {width.value:.1f} mm wide and {options.spacing.value:.1f} mm apart leave no "
            "meshes"
        )
        remedy = "Set them further apart than they are wide"
        wrong.append(error((*path, "spacing"), text, "net-spacing", remedy=remedy))
    return wrong


def _each(region: Region, spacing: Quantity, angle: Quantity) -> Quantity:
    """Strips of one set: the middle one and the pairs whose middles still cross the field."""
    reach = opaque(half_span, (region.width, region.height, angle), LENGTH)
    return 2 * (maximum(ceil(reach / spacing), number(1)) - 1) + 1


def _lengths(
    job: OrnamentJob, region: Region, options: NetOptions, width: Quantity, angle: Quantity,
    each: Quantity,
) -> tuple[Quantity, ...]:  # fmt: skip
    pairs = (round(each.value) - 1) // 2
    inputs = (region.width, region.height, angle, width)
    return tuple(
        sized(
            job,
            job.book.size_up(
                given(opaque(band_length, (*inputs, place * options.spacing), LENGTH), each)
            ),
            f"length_{place}",
            "length of the middle strip" if place == 0 else f"length of the strips of pair {place}",
            "where it crosses the field, its slanting ends included",
        )
        for place in range(pairs + 1)
    )


def _laid(
    job: OrnamentJob, region: Region, ply: Ply, net: Net, count: Quantity, wrong: list[Problem]
) -> OrnamentResult:
    numbers = [2 * region.faces if not place else 4 * region.faces
               for place in range(len(net.lengths))]  # fmt: skip
    run = total([n * length for n, length in zip(numbers, net.lengths, strict=True)])
    length = sized(job, given(run, net.each), "run", "all strips together", "the sum of them")
    pieces, uses = _pieces(job, ply, net, numbers), _uses(job, ply, length)
    bare = 1 - net.width / net.spacing
    each = whole(net.each, job, "each", "strips of each set on one panel",
                 "those whose middle crosses the field")  # fmt: skip
    pattern = Pattern(
        title="net",
        region=region,
        ply=ply,
        count=count,
        glued=length * net.width,
        covers=region.faces * region.width * region.height * (1 - bare * bare),
        layers=number(2),
        cut=_cut(net, numbers),
        lay=_lay(net, each),
        quantities=(each, *net.lengths, length),
        drawing=pattern_sheet(job, region, "Net pattern", net.rings(region)),
        rings=tuple(net.rings(region)),
        pieces=pieces,
        uses=uses,
        problems=tuple(wrong),
    )
    return laid(job, pattern)


def _pieces(job: OrnamentJob, ply: Ply, net: Net, numbers: list[Quantity]) -> tuple[Piece, ...]:
    if ply.width is not None:
        return ()
    return tuple(
        piece_of(job, f"finishing.{job.key}.strip_{place}", "strip of the net", count,
                 (net.width, length), "ends cut on the slant when laid")
        for place, (count, length) in enumerate(zip(numbers, net.lengths, strict=True))
    )  # fmt: skip


def _uses(job: OrnamentJob, ply: Ply, length: Quantity) -> tuple[Use, ...]:
    return () if ply.width is None else (by_length(job, length),)


def _cut(net: Net, numbers: list[Quantity]) -> tuple[Text, ...]:
    return tuple(
        say("Cut {count} strips {length} long.", count=count, length=length)
        for count, length in zip(numbers, net.lengths, strict=True)
    )


def _lay(net: Net, each: Quantity) -> tuple[Text, ...]:
    return (
        say("Find the middle of the field; rule a line through it at {angle} to the width.",
            angle=net.angle),
        say("Rule lines {spacing} apart on both sides of it: {each} in all.",
            spacing=net.spacing, each=each),
        say("Lay a strip along each with its middle on the line, the longest first."),
        say("Lay the other set over it, slanting the other way, in the same manner."),
        say("Cut the ends flush with the field."),
    )  # fmt: skip


PLUGIN = NetPattern()
