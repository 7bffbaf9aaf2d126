"""The work as the page shows it: steps with boxes to tick, numbers that can be asked."""

from __future__ import annotations

import hashlib
from dataclasses import dataclass
from types import SimpleNamespace

from markupsafe import Markup

from foredge.contract import Build, Operation, Piece
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.told import harmless, told
from foredge.emit.words import Words
from foredge.emit.work import parts, piece_row


@dataclass(frozen=True, slots=True)
class PageStep:
    """One operation. ``view`` is what the Markdown sheet says of it, as HTML.

    ``anchor`` is its id in the page; ``key`` is what its ticks are kept under, and changes
    with its words and with nothing else. ``stops`` are the gates to be read before it; ``at`` is
    when the spec says it was finished, or empty.
    """

    anchor: str
    key: str
    view: SimpleNamespace
    lines: tuple[Markup, ...]
    uses: tuple[Markup, ...]
    pieces: tuple[SimpleNamespace, ...]
    stops: tuple[str, ...]
    at: str


@dataclass(frozen=True, slots=True)
class PagePart:
    """Consecutive operations of one stage."""

    anchor: str
    number: int
    title: Markup
    steps: tuple[PageStep, ...]


def page_parts(build: Build, numbers: Numbers) -> tuple[PagePart, ...]:
    """The whole work, in order."""
    operations = {operation.id: operation for operation in build.order}
    pieces = {piece.name: piece for piece in build.whole.pieces}
    return tuple(
        PagePart(
            anchor=f"part-{part.number}",
            number=part.number,
            title=part.title,
            steps=tuple(
                _step(build, numbers, view, operations[str(view.id)], pieces) for view in part.steps
            ),
        )
        for part in told(build, parts)
    )


def _step(
    build: Build,
    numbers: Numbers,
    view: SimpleNamespace,
    operation: Operation,
    pieces: dict[str, Piece],
) -> PageStep:
    mine = [pieces[name] for name in operation.pieces if name in pieces]
    return PageStep(
        anchor=anchor(view.number),
        key=key(operation),
        view=view,
        lines=tuple(numbers.text(line) for line in operation.steps),
        uses=tuple(
            Markup("{} {}").format(
                harmless(use.material),
                numbers.number(use.amount, f"{use.material}, {operation.title}"),
            )
            for use in operation.uses
        ),
        pieces=tuple(page_piece(build, numbers, piece) for piece in mine),
        stops=operation.stops_for,
        at=build.book.done.get(operation.id, ""),
    )


def page_piece(build: Build, numbers: Numbers, piece: Piece) -> SimpleNamespace:
    """A piece to cut, its count and sizes explained."""
    row: SimpleNamespace = told(build, lambda one: piece_row(Words(one), piece))
    row.count = numbers.number(piece.count)
    row.size = numbers.size(piece)
    return row


def anchor(number: str) -> str:
    """The id of the step ``2.4`` in the page."""
    return f"step-{number.replace('.', '-')}"


def key(operation: Operation) -> str:
    """What the ticks of an operation are kept under: its id and its words, without numbers.

    A reading changes numbers and leaves what is done already done; other words are other
    work, and lose their ticks.
    """
    words = "\n".join([operation.id, *(line.template for line in operation.steps)])
    return hashlib.sha256(words.encode()).hexdigest()[:12]
