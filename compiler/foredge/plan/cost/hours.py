"""Hands-on time of one book and of all copies."""

from __future__ import annotations

from collections.abc import Iterable

from foredge.contract import TIME, Build, Operation, Origin, Quantity, StageHours, leaf, total


def hours(build: Build) -> tuple[StageHours, ...]:
    """Stage by stage in the order they ran; at the pace of ``bench.slower``."""
    found = []
    for stage, _ in build.stages:
        mine = [operation for operation in build.order if operation.stage == stage.name]
        if mine:
            found.append(
                StageHours(stage.name, stage.title, one_book(build, mine), all_copies(build, mine))
            )
    return tuple(found)


def one_book(build: Build, operations: Iterable[Operation]) -> Quantity:
    """The time of a book made alone."""
    return _paced(build, [operation.hands_on for operation in operations])


def all_copies(build: Build, operations: Iterable[Operation]) -> Quantity:
    """The time of all copies: what is done in one batch counts once."""
    copies = build.book.copies
    times = [one.hands_on if one.batch else one.hands_on * copies for one in operations]
    return _paced(build, times)


def _paced(build: Build, times: list[Quantity]) -> Quantity:
    whole = total(times) if times else leaf(0, TIME, "no time", Origin("constant"))
    slower = build.book.bench.slower
    return whole if slower is None else whole * slower
