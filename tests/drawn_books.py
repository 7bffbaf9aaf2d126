"""Books of every size for the tests of drawings: one spec each, with everything that draws."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from foredge.compile import Compiled, compile_spec
from foredge.registry import collect

REGISTRY, _ = collect(entry_points=False)

SIZES = {
    "a7": (74, 105),
    "a6": (105, 148),
    "a5": (148, 210),
    "a4": (210, 297),
    "a3": (297, 420),
    "a5-landscape": (210, 148),
}
"""Leaves in mm, ISO 216."""

SEWINGS = (
    "{use: tapes, thread: linen, tape: tape}",
    "{use: link-stitch, thread: linen}",
    "{use: long-stitch, thread: linen, cloth: canvas, backing: paper}",
)
COVERINGS = (
    "{use: full-cloth, material: canvas}",
    "{use: quarter-cloth, material: canvas, sides: paper}",
)
CLOSURES = (
    "{use: wrap-strap, strap: tape}",
    "{use: elastic, elastic: tape}",
    "{use: button-loop, button: 12 mm}",
    "{use: ribbon-tie, ribbon: tape}",
    "{use: magnets, diameter: 8 mm, thickness: 1 mm}",
    "{use: clasp, plate_width: 9 mm, plate_height: 14 mm}",
)
PATTERNS = (
    "{use: tile-pattern, on: paste-downs, stock: paper, width: SIDE, height: SIDE, gap: 2 mm}",
    "{use: row-pattern, on: paste-downs, stock: paper, width: SIDE, height: SIDE}",
    "{use: strip-pattern, on: back, stock: paper, width: 5 mm, gap: SIDE}",
    "{use: net-pattern, on: back, stock: tape, spacing: 30 mm}",
)
"""SIDE stands for a seventh of the leaf's width."""

ENDS = ("{use: tipped, paper: paper}", "{use: sewn, paper: paper}",
        "{use: cloth-jointed, paper: paper, cloth: canvas}")  # fmt: skip
SPINES = ("{use: card}", "{use: board}", "{use: none}")
BOARDS = ("{use: bought, stock: board}",
          "{use: laminated, layers: [{stock: board}, {stock: board}]}")  # fmt: skip
DISPLAYS = ("metric", "imperial", "both")


@dataclass(frozen=True)
class Drawn:
    """A book of ``size`` whose parts are the ``turn``-th of every list above."""

    size: str
    turn: int

    def __str__(self) -> str:
        return f"{self.size}-{self.turn}"


EVERY = tuple(
    Drawn(size, turn)
    for place, (size, turns) in enumerate(
        (("a7", 6), ("a6", 1), ("a5", 2), ("a4", 1), ("a3", 6), ("a5-landscape", 2))
    )
    for turn in range(place, place + turns)
)
"""The smallest and the largest book with every closure, those between them with some."""


def spec_of(drawn: Drawn) -> str:
    """The spec of one of these books."""
    wide, high = SIZES[drawn.size]

    def pick(of: tuple[str, ...]) -> str:
        return of[drawn.turn % len(of)]

    return f"""
foredge: 1
title: A Book of Size {drawn.size}
display: {pick(DISPLAYS)}
stock:
  paper: {{kind: sheet, width: {4 * wide + 40} mm, height: {2 * high + 40} mm, grain: height,
          count: 60, grammage: 90 g/m2, material: writing}}
  board: {{kind: board, width: {2 * wide + 60} mm, height: {high + 60} mm, grain: height, count: 6,
          thickness: 2.5 mm, material: greyboard}}
  canvas: {{kind: cloth, width: {3 * wide + 160} mm, height: {2 * high + 120} mm, grain: height,
           thickness: 0.4 mm, material: book-cloth, colour: dark sea green}}
  linen: {{kind: thread, length: 90 m, size: 35/3, material: linen}}
  tape: {{kind: tape, length: 60 m, width: 8 mm, thickness: 0.3 mm, colour: tarred brown}}
text_block:
  paper: paper
  leaf: {{width: {wide} mm, height: {high} mm}}
  gatherings: {{count: 12, folios: 4}}
  sewing: {pick(SEWINGS)}
  end_papers: {pick(ENDS)}
case:
  boards: {pick(BOARDS)}
  spine: {pick(SPINES)}
  covering: {pick(COVERINGS)}
closure: {pick(CLOSURES)}
embellishment:
  - use: relief
    on: front
    made_on: finished-book
    skin: {{use: tissue-skin}}
    parts:
      - {{use: ring, name: a ring with rather a long name, x: {0.4 * wide:.0f} mm,
         y: {0.3 * high:.0f} mm, diameter: {0.4 * wide:.0f} mm, width: 5 mm, height: 4 mm}}
      - {{use: dome, x: {0.4 * wide:.0f} mm, y: {0.3 * high:.0f} mm, diameter: 9 mm, height: 5 mm}}
      - {{use: cone, name: a twin that stands close to the edge, x: {0.84 * wide:.0f} mm,
         y: {0.55 * high:.0f} mm, diameter: 6 mm, height: 4 mm}}
      - {{use: cone, name: the other twin that stands close, x: {0.84 * wide - 7:.0f} mm,
         y: {0.55 * high:.0f} mm, diameter: 6 mm, height: 4 mm}}
      - {{use: cone, name: a third of them in the same row, x: {0.84 * wide - 14:.0f} mm,
         y: {0.55 * high:.0f} mm, diameter: 6 mm, height: 4 mm}}
      - {{use: dome, name: in the corner of head and spine, x: 9 mm, y: 8 mm, diameter: 6 mm,
         height: 3 mm}}
      - use: scatter
        name: grains
        of: {{use: dome, diameter: 5 mm, height: 3 mm}}
        count: 6
        x: {0.4 * wide:.0f} mm
        y: {0.72 * high:.0f} mm
        width: {0.5 * wide:.0f} mm
        height: {0.2 * high:.0f} mm
        seed: 3
  - {{use: lettering, on: spine, text: Sizes, id: spine-title}}
  - {{use: lettering, on: back, text: [A book, of its size], id: back-title,
     box: {{y: 8 mm, height: 12 mm}}}}
  - {pick(PATTERNS).replace("SIDE", f"{wide / 7:.0f} mm")}
finishing:
  - {{use: base-coat, on: relief, colour: deep oxblood}}
  - {{use: metallic, on: relief, colour: old brass, share: 30 %}}
bench:
  start: 2026-12-01
"""


def compiled(drawn: Drawn, folder: Path) -> Compiled:
    """That book, compiled."""
    file = folder / f"{drawn}.yaml"
    file.write_text(spec_of(drawn), encoding="utf-8")
    return compile_spec(str(file), REGISTRY)
