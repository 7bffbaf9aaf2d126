"""Books and finished blocks for the tests of the case; no text-block stage is run."""

from __future__ import annotations

from foredge.contract import LENGTH, MASS, Book, Origin, Quantity, StageResult, Upstream, leaf
from foredge.testing import book_from

HEAD = """\
foredge: 1
title: The Prop Table Ledger
stock:
  cereal: {kind: board, material: carton, width: 300 mm, height: 400 mm, count: 20, grain: height}
  shoe-lid: {kind: board, material: shoe-box, width: 300 mm, height: 400 mm, grain: height}
  flute: {kind: board, material: corrugated-b, width: 600 mm, height: 600 mm, grain: height}
  grey: {kind: board, material: greyboard, thickness: 2 mm, width: 500 mm, height: 700 mm}
  wrap: {kind: sheet, material: kraft-wrapping, width: 500 mm, height: 700 mm, grain: height}
  paper: {kind: sheet, material: office, width: 420 mm, height: 594 mm, grain: height}
  bought-cloth: {kind: cloth, material: book-cloth, width: 600 mm, height: 500 mm, grain: height}
  sail: {kind: cloth, material: canvas, width: 600 mm, height: 500 mm, grain: height}
  shirt: {kind: cloth, material: cotton, width: 600 mm, height: 500 mm, grain: height}
  coat: {kind: cloth, material: garment-leather, width: 600 mm, height: 500 mm}
  mystery: {kind: cloth, width: 600 mm, height: 500 mm}
"""
TEXT_BLOCK = """\
text_block:
  paper: paper
  leaf: {width: 150 mm, height: 205 mm}
  gatherings: {count: 10, folios: 3}
"""
CASE = """\
case:
  boards: {use: bought, stock: grey}
  covering: {use: full-cloth, material: bought-cloth}
"""


def book(case: str = CASE, *more: str) -> Book:
    """A book with this ``case:`` section, and further sections as they are."""
    return book_from("".join((HEAD, TEXT_BLOCK, case, *more)))


def mm(value: float, name: str, spread: float = 0.0) -> Quantity:
    """A length from outside, with its 95 % range."""
    low, high = (None, None) if not spread else (value - spread, value + spread)
    return leaf(value, LENGTH, name, Origin("spec"), low=low, high=high)


def finished_block(
    of: Book,
    *,
    height: float = 205.0,
    width: float = 150.0,
    spine: float = 12.0,
    fore_edge: float = 10.0,
    spread: float = 0.8,
    tapes: float = 0.0,
    supported: str = "yes",
    hinge: str = "sewn",
) -> Upstream:
    """A block as text-block hands it over, all in mm; gate G2 stands as ``of`` has it read."""
    sizes = {"height": height, "width": width, "spine": spine, "fore_edge": fore_edge}
    gates = tuple(
        of.measured(mm(size, f"estimated {side}", spread), "G2", f"block.{side}", side).named(
            f"text_block.block.{side}", rule="given", source="test"
        )
        for side, size in sizes.items()
    )
    quantities = (
        *gates,
        mm(0.0, "text_block.joint.end_paper_cloth"),
        mm(tapes, "text_block.joint.tapes"),
        mm(width, "text_block.paste_down.width"),
        mm(height, "text_block.paste_down.height"),
        leaf(250.0, MASS, "text_block.mass", Origin("spec")),
    )
    facts = (
        ("text_block.hinge", hinge),
        ("text_block.supported", supported),
        ("text_block.block_ready", "text-block.line-spine"),
    )
    return Upstream((("text-block", StageResult(quantities=quantities, facts=facts)),))
