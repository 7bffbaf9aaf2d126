"""The stage ``finishing``: from the pressed book to the one that may be posted."""

from __future__ import annotations

from foredge.contract import (
    Book,
    Operation,
    Problem,
    StageResult,
    Upstream,
    coats_of,
    known,
    merge,
    say,
    surfaces_of,
)
from foredge_stages.finishing.adorn import Adorned, adorn
from foredge_stages.finishing.checks import errors, nothing_there
from foredge_stages.finishing.closed import dimensions, fasten, thickness
from foredge_stages.finishing.coats import Chain, Step, split
from foredge_stages.finishing.masks import masks
from foredge_stages.finishing.options import FinishingOptions
from foredge_stages.finishing.rest import painted, rest
from foredge_stages.finishing.terms import OPEN, PRESSED, PROTECT, SECTION, STAGE


class Finishing:
    """Everything after the press: colour, letters, varnish, closure, and the waits.

    Facts: ``finishing.may_close`` and ``finishing.may_post`` hold the ids of the operations
    after whose wait the book may be closed, and posted.
    """

    kind = "stage"
    name = STAGE
    title = "Finishing"
    options = FinishingOptions
    section = SECTION
    prefix = SECTION
    needs: tuple[str, ...] = ("text-block", "case", "sculpt")

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        """Coats under the letters, the letters, what protects them, then closure and rest."""
        if not _known(upstream):
            return StageResult()
        coats, surfaces = coats_of(book), surfaces_of(upstream)
        wrong = errors(book, coats, surfaces)
        if wrong:
            return StageResult(problems=tuple(wrong))
        steps = tuple(map(Step, coats, book.finishing, masks(coats, book.finishing)))
        under, over = split(steps)
        ready = tuple(one for one in (PRESSED, upstream.fact("sculpt.dry")) if one)
        start = StageResult(operations=(_protect(book, ready),)) if steps else StageResult()
        chain = Chain(book, surfaces, (PROTECT,) if steps else ready, start).then(under)
        adorned = adorn(book, upstream, chain.last)
        if adorned.failed:
            return adorned.work
        chain = chain.lettered(adorned.work, adorned.done, adorned.dries, adorned.covers)
        bare = _unlettered(chain, over)
        if bare:
            return StageResult(problems=bare)
        return _close(book, upstream, chain.then(over), adorned)


def _known(upstream: Upstream) -> bool:
    """Whether the stages before this one got far enough for a book to be finished."""
    return known(upstream, "case.closed.thickness") is not None and bool(
        upstream.fact("case.cased_in")
    )


def _unlettered(chain: Chain, over: tuple[Step, ...]) -> tuple[Problem, ...]:
    return tuple(
        nothing_there(step.coat, chain.book)
        for step in over
        if chain.surfaces.patch(step.coat.regions).area is None
    )


def _close(book: Book, upstream: Upstream, chain: Chain, adorned: Adorned) -> StageResult:
    thick = thickness(upstream, adorned.adds, chain.dries)
    closure = fasten(book, upstream, thick, OPEN if painted(chain.dries) else chain.last[-1])
    fitted: tuple[str, ...] = ()
    if closure is not None:
        thick = thick + closure.adds_thickness
        fitted = (closure.done,) if closure.done else ()
    return merge(
        (
            chain.work,
            closure.work if closure is not None else StageResult(),
            rest(book, chain.dries, chain.last, fitted),
            StageResult(quantities=dimensions(upstream, thick)),
        )
    )


def _protect(book: Book, ready: tuple[str, ...]) -> Operation:
    return Operation(
        PROTECT,
        "Protect the block",
        (
            say("Wrap the block in film to the joints; slip paper under both covers."),
            say("Brush dust and crumbs off; wipe greasy fingermarks off with a barely damp rag."),
            say("Try every coat on a scrap of the same covering before it goes on the book."),
        ),
        book.practice("hand-set-up"),
        after=ready,
        tools=("film", "paper", "soft brush", "scrap of the covering"),
    )


PLUGIN = Finishing()
