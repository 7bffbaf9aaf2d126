"""Cutting the pieces, laying them, sealing: what all patterns share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import (
    AREA,
    INTO_CASE,
    Drawing,
    Look,
    Operation,
    Origin,
    OrnamentJob,
    OrnamentResult,
    Piece,
    Problem,
    Quantity,
    Severity,
    Side,
    StageResult,
    Tape,
    Text,
    Thread,
    Use,
    Wetting,
    cautions,
    dry_in_room,
    glue,
    leaf,
    note,
    say,
    stuff_of,
    wet,
)
from foredge_patterns.layout import Ring
from foredge_patterns.ply import Ply
from foredge_patterns.region import Region


@dataclass(frozen=True, slots=True)
class Pattern:
    """What one pattern has worked out.

    ``count`` of pieces on all faces; ``glued`` the area of all of them, ``covers`` the area
    they hide; ``layers`` how many lie on one another where it is thickest. ``rings`` are the
    pieces of one face in the field's own millimetres, from below.
    """

    title: str
    region: Region
    ply: Ply
    count: Quantity
    glued: Quantity
    covers: Quantity
    layers: Quantity
    cut: tuple[Text, ...]
    lay: tuple[Text, ...]
    quantities: tuple[Quantity, ...]
    drawing: Drawing
    rings: tuple[Ring, ...] = ()
    pieces: tuple[Piece, ...] = ()
    uses: tuple[Use, ...] = ()
    problems: tuple[Problem, ...] = ()


def errors(problems: Iterable[Problem]) -> bool:
    """Whether there is an error among ``problems``."""
    return any(problem.severity is Severity.ERROR for problem in problems)


def laid(job: OrnamentJob, pattern: Pattern) -> OrnamentResult:
    """The pattern with its work, thickness and drawing."""
    book, options, name = job.book, job.part.options, f"finishing.{job.key}"
    inside = options.on == "paste-downs"
    film = book.practice("glue-film")
    thickness = (pattern.layers * (pattern.ply.thickness + film)).named(
        f"{name}.thickness",
        label=f"thickness of the {pattern.title}",
        rule="layers on one another, each with its glue",
        source=pattern.ply.source,
    )
    covers = pattern.covers.named(
        f"{name}.area",
        label=f"area under the {pattern.title}",
        rule="on all its panels together",
        source="geometry",
    )
    count = pattern.count.named(
        f"{name}.count",
        label=f"pieces of the {pattern.title}",
        rule="on all its panels together",
        source="geometry",
    )
    extra = _inside(job, pattern, thickness) if inside else ()
    work = StageResult(
        quantities=(*pattern.region.quantities, *pattern.quantities, count, covers, thickness,
                    *extra),
        pieces=pattern.pieces,
        operations=(_cut(job, pattern), _lay(job, pattern), _seal(job, pattern)),
        drawings=(pattern.drawing,),
        looks=(_seen(job, pattern),),
        problems=(*pattern.problems, *_gape(job, extra)),
    )  # fmt: skip
    return OrnamentResult(
        work,
        options.on,
        thickness,
        covers,
        done=_id(job, "seal"),
        may_close=book.table("paints", options.seal, "close"),
        dry_before=INTO_CASE if inside else (),
    )


def _seen(job: OrnamentJob, pattern: Pattern) -> Look:
    """The pieces on their panel; of the two paste-downs, the front one."""
    region, options = pattern.region, job.part.options
    on: Side = "paste-down" if options.on == "paste-downs" else options.on
    left, top = region.left.value, region.top.value
    pieces = tuple((tuple((left + x, top + y) for x, y in ring),) for ring in pattern.rings)
    return Look(on, "pattern", stuff_of(job.book, options.stock, _row(job)), pieces)


def _row(job: OrnamentJob) -> str:
    """What its pieces are taken for where the shelf does not say."""
    match job.book.stock.get(job.part.options.stock):
        case Tape():
            return "sewing-tape"
        case Thread():
            return "thread"
    return "decorated"


def _inside(job: OrnamentJob, pattern: Pattern, thickness: Quantity) -> tuple[Quantity, ...]:
    both = (2 * thickness).named(
        f"finishing.{job.key}.inside",
        label=f"both {pattern.title}s, inside the closed cover",
        rule="one on each paste-down",
        source="geometry",
    )
    return (both,)


GAPE = 1.0
"""mm between the boards from which the maker is told."""


def _gape(job: OrnamentJob, both: tuple[Quantity, ...]) -> list[Problem]:
    if not both or both[0].value < GAPE:
        return []
    return [
        note(
            job.part.path,
            f"the patterns on both paste-downs bring {both[0].value:.1f} mm between the boards",
            "pattern-gapes",
            consequence="The cover stands open at the fore-edge: the spine is made for the block",
            remedy="Take thinner stock, or leave as much out of the block",
            source="common practice",
        )
    ]


def in_words(title: str) -> str:
    """A title inside a sentence: its first letter small, unless it is an abbreviation."""
    return title[:1].lower() + title[1:] if title[1:2].islower() else title


def _id(job: OrnamentJob, verb: str) -> str:
    return f"finishing.{verb}-{job.key}"


def _where(job: OrnamentJob) -> str:
    on: str = job.part.options.on
    return "both paste-downs" if on == "paste-downs" else f"the {on} board"


def _shut(job: OrnamentJob) -> tuple[str, ...]:
    return INTO_CASE if job.part.options.on == "paste-downs" else ()


def _cut(job: OrnamentJob, pattern: Pattern) -> Operation:
    region, book = pattern.region, job.book
    sizes = (region.left, region.width, region.height)
    gates: frozenset[str] = frozenset().union(*(size.gates for size in sizes))
    return Operation(
        _id(job, "cut"),
        f"Cut the pieces of the {pattern.title}",
        pattern.cut,
        book.practice("hand-set-up") + pattern.count * book.practice("hand-piece") / 2,
        stops_for=tuple(sorted(gates)),
        cautions=("blade",),
        pieces=tuple(piece.name for piece in pattern.pieces),
        uses=pattern.uses,
        tools=("knife", "steel rule", "cutting mat", "scissors"),
        splits=True,
    )


def _lay(job: OrnamentJob, pattern: Pattern) -> Operation:
    book, options, region = job.book, job.part.options, pattern.region
    waste = (say("Slip waste paper under the end leaf, so that no glue reaches the block."),)
    edge = "fold" if options.on == "paste-downs" else "board's spine edge"
    rule = say(
        "Rule the field, {width} by {height}: {clear} from the {edge}, {top} below the head.",
        width=region.width,
        height=region.height,
        clear=region.left,
        edge=edge,
        top=region.top,
    )
    return Operation(
        _id(job, "lay"),
        f"Lay the {pattern.title} on {_where(job)}",
        (
            *(waste if _shut(job) else ()),
            rule,
            *pattern.lay,
            say("Rub it down through clean paper; lay film and a light weight on it."),
        ),
        book.practice("hand-set-up") + pattern.count * book.practice("hand-piece") / 2,
        after=(_id(job, "cut"), *job.after),
        before_any=_shut(job),
        wait=dry_in_room(book, book.table("drying", "pva-joint", "cure"), shut=True),
        waiting="under film and a light weight",
        resources=("hands", "weights"),
        cautions=cautions(book, "adhesives", options.adhesive),
        uses=(glue(book, options.adhesive, pattern.glued, pattern.title),),
        wettings=_wettings(job, pattern),
        tools=("fine glue brush", "rule", "pencil", "tweezers"),
    )


def _wettings(job: OrnamentJob, pattern: Pattern) -> tuple[Wetting, ...]:
    """Outside it wets a board; a paste-down is not on its board yet."""
    on, dry = job.part.options.on, job.book.table("drying", "pva-joint", "cure")
    if on == "paste-downs":
        return ()
    adhesive = job.part.options.adhesive
    return (wet(job.book, adhesive, pattern.glued, f"board-{on}", "outside", dry),)


def _seal(job: OrnamentJob, pattern: Pattern) -> Operation:
    book, seal = job.book, job.part.options.seal
    title = book.words("paints", seal, "title")
    coverage = book.table("paints", seal, "coverage")
    region = pattern.region
    area = region.faces * region.width * region.height
    inside = bool(_shut(job))
    amount = area * coverage * (1 + book.practice("waste-paint"))
    steps = [
        say("Brush one thin coat over the {what}, into every edge: {seal}.",
            what=pattern.title, seal=in_words(title)),
    ]  # fmt: skip
    if inside:
        steps.append(say("Stand the covers open until it is quite dry: the press comes next."))
    return Operation(
        _id(job, "seal"),
        f"Seal the {pattern.title}",
        tuple(steps),
        book.practice("hand-set-up") + area / _HUNDRED * book.practice("hand-coat"),
        after=(_id(job, "lay"),),
        before_any=_shut(job),
        wait=dry_in_room(book, book.table("paints", seal, "close" if inside else "next")),
        waiting="the sealer dries, open to the air",
        cautions=cautions(book, "paints", seal),
        uses=(Use(title, amount, note=f"over the {pattern.title}"),),
        tools=("soft brush",),
    )


_HUNDRED = leaf(10000.0, AREA, "hundred square centimetres", Origin("constant"))


def piece_of(
    job: OrnamentJob,
    name: str,
    title: str,
    count: Quantity,
    size: tuple[Quantity, Quantity],
    shape: str = "",
) -> Piece:
    """Pieces cut from the stock the options name, any way of the grain."""
    stock: str = job.part.options.stock
    return Piece(name, title, count, *size, "any", stock=stock, shape=shape)


def whole(count: Quantity, job: OrnamentJob, name: str, label: str, rule: str) -> Quantity:
    """A count of rows or pieces under its name."""
    return count.named(f"finishing.{job.key}.{name}", label=label, rule=rule, source="geometry")


def sized(
    job: OrnamentJob, q: Quantity, name: str, label: str, rule: str, source: str = "geometry"
) -> Quantity:
    """A length of the pattern under its name."""
    return q.named(f"finishing.{job.key}.{name}", label=label, rule=rule, source=source)
