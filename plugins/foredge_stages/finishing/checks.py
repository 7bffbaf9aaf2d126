"""What only the stage can know is wrong before a brush is dipped."""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import Book, Coat, Problem, Surfaces, error, relief_panels

_OWN = ("closed", "coats", "wait", "protect-block", "rest-open", "rest-closed")
"""Names the stage uses itself beside those of its items."""


def errors(book: Book, coats: Sequence[Coat], surfaces: Surfaces) -> list[Problem]:
    """Names that are taken, and coats that have nothing to go on."""
    # Letters get their area when they are set; that there are any is seen then.
    bare = [
        coat for coat in coats if not _letters(coat) and surfaces.patch(coat.regions).area is None
    ]
    return [*_names(book), *(nothing_there(coat, book) for coat in bare)]


def _names(book: Book) -> list[Problem]:
    seen: set[str] = set()
    problems: list[Problem] = []
    for part in (*book.embellishment, *book.finishing):
        own = getattr(part.options, "id", None)
        if own is None:
            continue
        if own in seen or own in _OWN:
            why = "stands twice" if own in seen else "is a name the sheet uses itself"
            problems.append(
                error((*part.path, "id"), f"the id '{own}' {why}", "id-taken",
                      remedy="Give this item another id")
            )  # fmt: skip
        seen.add(own)
    return problems


def _letters(coat: Coat) -> bool:
    return any(region.kind == "letters" for region in coat.regions)


def _on_relief(coat: Coat, book: Book) -> bool:
    said = [part.options.on for part in book.finishing if part.path == coat.path]
    return "relief" in said or ("relief",) in said


def nothing_there(coat: Coat, book: Book) -> Problem:
    """A coat for what the book does not have, or that is masked away whole."""
    if _letters(coat):
        why = "the book has no lettering"
    elif _on_relief(coat, book) and not relief_panels(book):
        why = "the book has no relief"
    else:
        why = "all of it is kept clean, or not there"
    return error(
        coat.path,
        f"'{coat.key}' has nothing to go on: {why}",
        "finish-nothing-to-coat",
        remedy="Say what it goes on with 'on', and what stays clean of it with 'leave'",
    )
