"""Lettering and patterns: each embellishment that belongs to this stage, in the spec's order."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from foredge.contract import (
    Book,
    OrnamentResult,
    Part,
    Quantity,
    StageResult,
    Upstream,
    merge,
    number,
    ornament_job,
    ornament_keys,
    total,
)
from foredge_stages.finishing.coats import Dry
from foredge_stages.finishing.terms import STAGE, no_time


@dataclass(frozen=True, slots=True)
class Adorned:
    """``done`` are the last operations of what lies outside; ``covers`` the lettered area by
    face; ``inside`` and ``outside`` what ornaments add to the closed book's thickness."""

    work: StageResult
    done: tuple[str, ...]
    dries: tuple[Dry, ...]
    covers: Mapping[str, Quantity]
    adds: tuple[Quantity, ...]
    failed: bool


def adorn(book: Book, upstream: Upstream, coats: tuple[str, ...]) -> Adorned:
    """Every ornament made, each outside one after the one before it."""
    made: list[OrnamentResult] = []
    after = coats
    for part, key in _ornaments(book):
        result: OrnamentResult = part.plugin.adorn(ornament_job(book, part, upstream, key, after))
        made.append(result)
        if result.on != "paste-downs" and result.done:
            after = (result.done,)
    outside = [one for one in made if one.on != "paste-downs"]
    return Adorned(
        work=merge(_in_time(one) for one in made),
        done=after if after != coats else (),
        dries=tuple(Dry(one.may_close, one.may_close, no_time()) for one in outside if one.done),
        covers=_covers(outside),
        adds=tuple(_adds(one) for one in made if one.on != "spine" and one.done),
        failed=any(not one.done for one in made),
    )


def _ornaments(book: Book) -> list[tuple[Part[Any], str]]:
    keys = ornament_keys((*book.embellishment, *book.finishing))
    return [
        (part, key)
        for part, key in zip(book.embellishment, keys, strict=False)
        if getattr(part.plugin, "stage", "") == STAGE
    ]


def _in_time(result: OrnamentResult) -> StageResult:
    """Its work, the last operation before what must not begin until it is dry."""
    operations = tuple(
        replace(one, before_any=tuple(dict.fromkeys((*one.before_any, *result.dry_before))))
        if one.id == result.done
        else one
        for one in result.work.operations
    )
    return replace(result.work, operations=operations)


def _covers(outside: list[OrnamentResult]) -> dict[str, Quantity]:
    found: dict[str, list[Quantity]] = {}
    for one in outside:
        if one.done:
            found.setdefault(one.on, []).append(one.covers)
    return {face: total(areas) for face, areas in found.items()}


def _adds(result: OrnamentResult) -> Quantity:
    """Paste-downs are two."""
    return result.thickness * number(2) if result.on == "paste-downs" else result.thickness
