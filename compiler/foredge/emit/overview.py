"""What the book is, said in a few lines at the top of its sheet."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from foredge.contract import Build, Part, Text, say
from foredge.display import show
from foredge.emit.escape import code, escape
from foredge.emit.words import PROVISIONAL, range_of
from foredge.plan.cost.hours import all_copies, one_book
from foredge.plan.cost.money import worked
from foredge.quantity import Quantity, total


@dataclass(frozen=True, slots=True)
class Trouble:
    """A warning or note, with what to do about it."""

    severity: str
    text: str
    remedy: str
    where: str
    rule: str


_SIZES = (
    (
        "Finished book, closed",
        ("finishing.closed.height", "finishing.closed.width", "finishing.closed.thickness"),
    ),
    ("Closed book", ("case.closed.height", "case.closed.width", "case.closed.thickness")),
    ("Block", ("text_block.block.height", "text_block.block.width", "text_block.block.spine")),
)
_COUNTS = (
    ("Pages", "text_block.pages"),
    ("Gatherings", "text_block.gatherings"),
    ("Folios in all", "text_block.folios"),
)
_MASSES = ("text_block.mass", "case.mass", "sculpt.mass.dry")
"""What the finished book weighs is the sum of these; coats and closure are left out."""


def glance(build: Build) -> tuple[tuple[str, str], ...]:
    """Label and value: size, make-up, the parts chosen, the time it takes."""
    return tuple((label, _in_words(build, said)) for label, said in glance_rows(build))


def glance_rows(build: Build) -> tuple[tuple[str, Text | str], ...]:
    """The same before its numbers are written out; what has none is a text already."""
    known = {quantity.name: quantity for quantity in build.whole.quantities}
    there = [(label, names) for label, names in _SIZES if all(name in known for name in names)]
    if there and there[0][0] == _SIZES[0][0]:  # what nothing is done to is told once
        there = [(label, names) for label, names in there if label != _SIZES[1][0]]
    rows: list[tuple[str, Text | str]] = [
        (label, _sizes(*(known[name] for name in names))) for label, names in there
    ]
    rows += [(label, say("{n}", n=known[name])) for label, name in _COUNTS if name in known]
    masses = [known[name] for name in _MASSES if name in known]
    if masses:
        rows.append(("Mass, coats and closure left out", say("{mass}", mass=total(masses))))
    rows += _chosen(build)
    return (*rows, ("Work", _work(build)), *_copies(build))


def _sizes(height: Quantity, width: Quantity, thickness: Quantity) -> Text:
    words = "{height} high, {width} wide, {thickness} thick"
    return say(words, height=height, width=width, thickness=thickness)


def _in_words(build: Build, said: Text | str) -> str:
    """One mark for all the numbers of a line."""
    if isinstance(said, str):
        return said
    mark = "" if all(number.firm for number in said.quantities()) else f"{PROVISIONAL} "
    shown = (
        part
        if isinstance(part, str)
        else show(part, build.book.display, within=range_of(build, part))
        for part in said.segments()
    )
    return mark + "".join(shown)


def _work(build: Build) -> str:
    hands_on = one_book(build, build.order).value
    waits = sum(
        operation.wait is not None and operation.wait.value > 0 for operation in build.order
    )
    resting = f"{waits} of them with a wait after them" if waits else "none with a wait"
    return f"{len(build.order)} steps, {resting}; {worked(hands_on)} hands-on"


def _copies(build: Build) -> Iterator[tuple[str, str]]:
    """What several copies take together; the steps tell one book."""
    if build.book.copies.value > 1:
        hands_on = worked(all_copies(build, build.order).value)
        told = f"{show(build.book.copies)}; pieces, amounts and times of the steps are of one book"
        yield "Copies", told
        yield "Work on all copies", f"{hands_on} hands-on"


def _chosen(build: Build) -> Iterator[tuple[str, str]]:
    """The parts chosen in each section of the spec, by the names of their keys."""
    for options in build.book.sections.values():
        for key, part in _parts_of(options):
            yield key.replace("_", "-").capitalize(), escape(part.plugin.title)


def _parts_of(options: Any) -> Iterator[tuple[str, Part[Any]]]:
    for key in getattr(options, "__struct_fields__", ()):
        value = getattr(options, key)
        for one in value if isinstance(value, tuple) else (value,):
            if isinstance(one, Part):
                yield key, one


def remarks(build: Build) -> tuple[str, ...]:
    """The maker's own notes, from the sections and the parts in them."""
    found: list[str] = []
    for options in build.book.sections.values():
        parts = [part.options for _, part in _parts_of(options)]
        found += [note for one in (options, *parts) if (note := getattr(one, "note", None))]
    return tuple(escape(note) for note in dict.fromkeys(found))


@dataclass(frozen=True, slots=True)
class Consent:
    """A problem the maker accepted, the rule's name, and the reason given."""

    text: str
    rule: str
    because: str


def consents(build: Build) -> tuple[Consent, ...]:
    """What the maker accepted, so that whoever works from the sheet knows it too."""
    return tuple(
        Consent(
            _sentences(one.problem.text, one.problem.consequence),
            code(one.problem.rule),
            _sentences(one.because),
        )
        for one in build.accepted
    )


def troubles(build: Build) -> tuple[Trouble, ...]:
    """What the compiler has to say about this book, as it ordered it."""
    return tuple(
        Trouble(
            severity=one.severity.value,
            text=_sentences(one.text, one.consequence),
            remedy=_sentences(one.remedy),
            where=code(f"{build.shown(one.span.file)}:{one.span.line}"),
            rule=code(one.rule),
        )
        for one in build.diagnostics
    )


def _sentences(*texts: str) -> str:
    said = [text if text.endswith((".", "?", "!")) else text + "." for text in texts if text]
    return " ".join(escape(text[0].upper() + text[1:]) for text in said)
