"""When the finished book may be closed, and when it may be posted."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from foredge.contract import (
    Book,
    Operation,
    Quantity,
    StageResult,
    cited,
    dry_in_room,
    maximum,
    say,
)
from foredge_stages.finishing.coats import Dry
from foredge_stages.finishing.terms import CLOSED, OPEN, PRESSED, no_time


def painted(dries: Sequence[Dry]) -> bool:
    """Whether anything outside has to harden before the book is closed."""
    return any(dry.close is not None for dry in dries)


def rest(
    book: Book, dries: Sequence[Dry], last: tuple[str, ...], fitted: tuple[str, ...] = ()
) -> StageResult:
    """Both waits, the operations that keep them, and what other stages may ask.

    ``last`` are the operations of the coats, ``fitted`` those of a closure, which is fitted
    on the book as it is closed. A book with nothing painted on it is closed in the press.
    """
    close, post = _close(dries), _post(book, dries)
    if not painted(dries):
        facts = (("finishing.may_close", PRESSED), ("finishing.may_post", PRESSED))
        return StageResult(quantities=(close, post), facts=facts)
    more = maximum(post - close, no_time())
    return StageResult(
        quantities=(close, post),
        operations=(_open(book, close, last), _shut(book, more, fitted)),
        facts=(("finishing.may_close", OPEN), ("finishing.may_post", CLOSED)),
    )


def _left(dries: Sequence[Dry], figure: Callable[[Dry], Quantity | None]) -> Quantity:
    """What is left to wait after the last of ``dries``: each one's own time, less what the
    waits of those after it have taken of it."""
    left = no_time()
    for dry in dries:
        after = left - dry.waits
        own = figure(dry)
        left = after if own is None else maximum(after, own)
    return maximum(left, no_time())


def _close(dries: Sequence[Dry]) -> Quantity:
    return _left(dries, lambda dry: dry.close).named(
        "finishing.wait.close",
        label="from the last coat until it may be closed",
        rule="every coat its own time until faces may touch, less the waits after it",
        source=_sources([dry.close for dry in dries if dry.close is not None]),
    )


def _post(book: Book, dries: Sequence[Dry]) -> Quantity:
    joined = book.table("drying", "casing-in", "cure")
    glued = Dry(None, dry_in_room(book, joined), no_time())
    return _left((glued, *dries), lambda dry: dry.post).named(
        "finishing.wait.post",
        label="from the last step until it may be posted",
        rule="in a parcel faces are pressed and get warm: the slow end of every coat, and the "
        "glue of casing-in",
        source=f"common practice; casing-in: {cited(joined)}",
    )


def _sources(times: Sequence[Quantity]) -> str:
    """The citations of the times, each once; they stand at the root of what the room made."""
    cited_by = [text for time in times for text in _roots(time)]
    found = dict.fromkeys(one for text in cited_by for one in text.split("; "))
    return "; ".join(found) or "geometry"


def _roots(time: Quantity) -> list[str]:
    if time.op == "leaf":
        return [cited(time, "the maker's choice")]
    return [text for arg in time.args[:1] for text in _roots(arg)]


def _open(book: Book, close: Quantity, last: tuple[str, ...]) -> Operation:
    return Operation(
        OPEN,
        "Let it harden open",
        (
            say("Take film and tape off; look the faces over in slanting light."),
            say("Stand the book on its tail, covers apart, where air gets round it."),
            say("Nothing may touch or lean on the painted faces."),
            say("At the end press a knuckle on a hidden place: if it sticks, wait longer."),
        ),
        book.practice("hand-measure"),
        after=last,
        wait=close,
        waiting="the coats harden; do not close it",
    )


def _shut(book: Book, more: Quantity, fitted: tuple[str, ...]) -> Operation:
    # Whoever fits a closure has closed the book over parchment for it.
    wrap = say("Lay baking parchment round the covers, and close it slowly.")
    return Operation(
        CLOSED,
        "Leave the book closed" if fitted else "Close the book",
        (
            *(() if fitted else (wrap,)),
            say("Keep it upright and by itself: no stack, no parcel."),
            say("When you pack it, leave the parchment round it."),
        ),
        book.practice("hand-measure"),
        after=(OPEN, *fitted),
        wait=more,
        waiting="closed and upright; after that it may be packed and posted",
        cautions=("frost-heat-store",),
        tools=("baking parchment",),
    )
