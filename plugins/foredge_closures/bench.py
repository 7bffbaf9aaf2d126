"""What closures share: lengths round the closed book, slits and beds, setting and fitting.

What is anchored inside a board is set before the paste-downs hide it. Its length may rest on
a relief that is made later: then it is cut long, and fitted on the finished book.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from foredge.contract import (
    BEFORE_PASTE_DOWNS,
    ClosureJob,
    Operation,
    Piece,
    Quantity,
    Tape,
    Text,
    Use,
    cautions,
    cited,
    cloth_figures,
    dry_in_room,
    glue,
    say,
)

SET = "finishing.set-closure"
FIT = "finishing.fit-closure"

BEFORE_RELIEF = tuple(
    f"sculpt.{verb}-{board}" for verb in ("counter-line", "key") for board in ("front", "back")
)
"""Where a relief has them: a board under weight, or with wet clay on it, cannot be bored."""

CHOICE = "the maker's choice"
NAME = "finishing.closure"


@dataclass(frozen=True, slots=True)
class Strip:
    """A ribbon, strap or elastic: its width and thickness, and where it lies on the shelf."""

    width: Quantity
    thickness: Quantity
    stock: str | None
    material: str


def mm(q: Quantity) -> str:
    """A length for a problem's text."""
    return f"{q.value:.1f}".removesuffix(".0") + " mm"


def named(key: str, q: Quantity, label: str, rule: str, source: str) -> Quantity:
    """``q`` as ``finishing.closure.<key>``."""
    return q.named(f"{NAME}.{key}", label=label, rule=rule, source=source)


def decided(job: ClosureJob, asked: Quantity | None, practice: str) -> Quantity:
    """What the spec asks for, or the usual figure."""
    return job.book.default(practice) if asked is None else asked


def said_by(asked: Quantity | None, usual: Quantity) -> str:
    """Who says so: the maker, or the table."""
    return CHOICE if asked is not None else cited(usual)


def in_use(job: ClosureJob, *, over_relief: bool = True) -> Quantity:
    """How thick the closed book gets where the closure goes round it."""
    grows = job.book.practice("strap-ease")
    base = job.thickness if over_relief else job.case_thickness
    return named(
        "thickness",
        (base + job.swell) * (1 + grows),
        "closed book in use, where the closure goes round it",
        "the closed book, what is pasted in later, and what use adds"
        + ("" if over_relief else "; the closure keeps clear of any relief"),
        f"geometry; {cited(grows)}",
    )


def strip_of(job: ClosureJob, stock: str | None, width: Quantity | None, row: str) -> Strip:
    """The strip on the shelf; ``row`` of the cloth table where the spec names none."""
    item = job.book.stock.get(stock) if stock else None
    known = item.width if isinstance(item, Tape) else None
    chosen = width if width is not None else known
    wide = job.book.default("closure-width") if chosen is None else chosen
    figures = cloth_figures(job.book, stock, row)
    return Strip(
        named("width", job.book.size(wide), "width of the closure", "as chosen, or the usual",
              CHOICE if chosen is not None else cited(wide)),
        figures.thickness,
        stock,
        job.book.words("cloth", figures.row, "title"),
    )  # fmt: skip


def set_closure(
    job: ClosureJob,
    title: str,
    steps: tuple[Text, ...],
    pieces: tuple[Piece, ...],
    *,
    area: Quantity | None = None,
    after: tuple[str, ...] = (),
    stops_for: tuple[str, ...] = (),
    hazards: tuple[str, ...] = ("blade",),
    tools: tuple[str, ...] = (),
) -> Operation:
    """What is done before the paste-downs cover the insides of the boards."""
    book = job.book
    glued = (glue(book, "pva", area, "closure"),) if area is not None else ()
    return Operation(
        SET,
        title,
        steps,
        book.practice("hand-closure"),
        after=tuple(one for one in (job.covered, *after) if one),
        before_any=(*BEFORE_PASTE_DOWNS, *(() if job.sculpted in after else BEFORE_RELIEF)),
        wait=(
            dry_in_room(book, book.table("drying", "pva-joint", "next"), shut=True)
            if glued else None
        ),
        waiting="the anchored ends set under weight" if glued else "",
        stops_for=stops_for,
        cautions=tuple(dict.fromkeys((*hazards, *(cautions(book, "adhesives", "pva")
                                                  if glued else ())))),
        pieces=tuple(piece.name for piece in pieces),
        uses=glued,
        tools=("closure template", "knife", "steel rule", *tools),
    )  # fmt: skip


def with_bought(operation: Operation, *bought: Use) -> Operation:
    """``operation`` with what it takes out of a bag: buttons, clasps, magnets."""
    return replace(operation, uses=(*operation.uses, *bought))


def fit_closure(
    job: ClosureJob,
    title: str,
    steps: tuple[Text, ...],
    *,
    after: tuple[str, ...] = (SET,),
    hazards: tuple[str, ...] = (),
    tools: tuple[str, ...] = ("scissors",),
) -> Operation:
    """What waits for the finished, dry, closed book."""
    first = say("Lay baking parchment round the covers, and close the book.")
    return Operation(
        FIT,
        title,
        (first, *steps),
        job.book.practice("hand-closure"),
        after=tuple(one for one in (*after, job.pressed, job.sculpted, job.coated) if one),
        stops_for=("G3",) if job.sculpted else (),
        cautions=hazards,
        tools=("baking parchment", *tools),
    )
