"""Books with lettering and patterns, and their faces, for the tests; no stage is run."""

from __future__ import annotations

from typing import Any

from case_books import HEAD, TEXT_BLOCK, mm
from foredge.contract import (
    Book,
    OrnamentJob,
    OrnamentResult,
    StageResult,
    Upstream,
    ornament_job,
    ornament_keys,
)
from foredge.testing import book_from

CASE = """\
case:
  boards: {use: bought, stock: grey}
  covering: {use: full-cloth, material: bought-cloth}
"""
SIZES = {
    "case.board.width": 147.0,
    "case.board.height": 211.0,
    "case.spine.width": 20.0,
    "case.joint": 8.0,
    "case.paste_down.width": 146.0,
    "case.paste_down.height": 205.0,
}


def adorned(*items: str, more: str = "", head: str = HEAD, **files: Any) -> Book:
    """A book with these embellishment items, each a flow mapping."""
    listed = "".join(f"  - {item}\n" for item in items)
    text = f"{head}{TEXT_BLOCK}{CASE}embellishment:\n{listed}{more}"
    return book_from(text, **files)


def cased(**sizes: float) -> Upstream:
    """What text-block and case hand over, mm; ``board__width=...`` is ``case.board.width``."""
    changed = {f"case.{name.replace('__', '.')}": size for name, size in sizes.items()}
    quantities = tuple(
        mm(size, name, 0.5) if name.startswith("case.board") else mm(size, name)
        for name, size in {**SIZES, **changed}.items()
    )
    facts = (
        ("text_block.block_ready", "text-block.line-spine"),
        ("case.covered", "case.cover"),
        ("case.cased_in", "case.case-in"),
    )
    return Upstream((("case", StageResult(quantities=quantities, facts=facts)),))


def jobs(book: Book, upstream: Upstream | None = None) -> tuple[OrnamentJob, ...]:
    """The job of every embellishment of ``book``."""
    keys = ornament_keys(book.embellishment)
    known = upstream if upstream is not None else cased()
    return tuple(
        ornament_job(book, part, known, key)
        for part, key in zip(book.embellishment, keys, strict=True)
    )


def adorn(book: Book, upstream: Upstream | None = None) -> OrnamentResult:
    """What the first embellishment of ``book`` makes."""
    job = jobs(book, upstream)[0]
    result: OrnamentResult = job.part.plugin.adorn(job)
    return result


def quantity(result: OrnamentResult, name: str) -> float:
    """The value of the one quantity whose name ends with ``.name``."""
    (found,) = [q for q in result.work.quantities if (q.name or "").endswith(f".{name}")]
    return found.value
