"""Cutting tasks for the tests: the published classes, drawn from fixed seeds, and planted ones.

Classes 1 to 6: J. O. Berkey and P. Y. Wang, "Two-dimensional finite bin-packing algorithms",
Journal of the Operational Research Society 38 (1987), pp. 423-429. Classes 7 to 10: S. Martello
and D. Vigo, "Exact solution of the two-dimensional finite bin packing problem", Management
Science 44 (1998), pp. 388-399. The definitions are those of both papers; the drawings are ours.
"""

from __future__ import annotations

import random

from foredge.plan.cutting import Piece, Sheet

Task = tuple[list[Sheet], list[Piece]]
_BIN = {1: 10, 2: 30, 3: 40, 4: 100, 5: 100, 6: 300, 7: 100, 8: 100, 9: 100, 10: 100}
_LARGEST = {1: 10, 2: 10, 3: 35, 4: 35, 5: 100, 6: 100}


def classical(group: int, items: int, number: int, *, turn: bool) -> Task:
    """One task of class 1 to 10 with ``items`` pieces on equal sheets."""
    rng = random.Random(f"class {group} items {items} number {number}")
    side = _BIN[group]
    pieces = []
    for index in range(items):
        width, height = _draw(rng, group, side)
        pieces.append(Piece(f"p{index}", width, height, 1, turn))
    return [Sheet("bin", side, side, items)], pieces


def _draw(rng: random.Random, group: int, side: int) -> tuple[int, int]:
    if group <= 6:
        return rng.randint(1, _LARGEST[group]), rng.randint(1, _LARGEST[group])
    kind = group - 7 if rng.random() < 0.7 else rng.choice([k for k in range(4) if k != group - 7])
    long, half = (2 * side // 3, side), (1, side // 2)
    ranges = [(long, half), (half, long), ((side // 2, side), (side // 2, side)), (half, half)]
    (low_w, high_w), (low_h, high_h) = ranges[kind]
    return rng.randint(low_w, high_w), rng.randint(low_h, high_h)


def split(rng: random.Random, width: int, height: int, parts: int, least: int) -> list[list[int]]:
    """A random guillotine partition of a rectangle into about ``parts`` rectangles."""
    panels = [[width, height]]
    for _ in range(20 * parts):
        if len(panels) >= parts:
            break
        panels.sort(key=lambda panel: panel[0] * panel[1] * rng.uniform(0.3, 1.0))
        panel = panels.pop()
        axis = int(panel[1] > panel[0]) if rng.random() < 0.7 else rng.randint(0, 1)
        if panel[axis] < 2 * least:
            panels.append(panel)
            continue
        at = rng.randint(least, panel[axis] - least)
        for size in (at, panel[axis] - at):
            panels.append([size, panel[1]] if axis == 0 else [panel[0], size])
    return panels


def _as_pieces(rng: random.Random, panels: list[list[int]], turn: bool) -> list[Piece]:
    rng.shuffle(panels)
    return [
        Piece(f"p{i}", *((h, w) if turn and rng.random() < 0.5 else (w, h)), 1, turn)
        for i, (w, h) in enumerate(panels)
    ]


def planted_equal(number: int, sheets: int, parts: int, *, turn: bool) -> Task:
    """Pieces that come from ``sheets`` equal sheets without waste; the optimum is known."""
    rng = random.Random(f"equal {number} {sheets} {parts}")
    width, height = rng.randint(200, 600), rng.randint(200, 600)
    panels: list[list[int]] = []
    for _ in range(sheets):
        panels += split(rng, width, height, parts, 20)
    return [Sheet("s", width, height, 3 * sheets)], _as_pieces(rng, panels, turn)


def planted_mixed(number: int, kinds: int, sheets: int, parts: int, *, turn: bool) -> Task:
    """Pieces from ``sheets`` sheets of ``kinds`` sizes without waste, each size in plenty."""
    rng = random.Random(f"mixed {number} {kinds} {sheets} {parts}")
    sizes = [(rng.randint(100, 600), rng.randint(100, 600)) for _ in range(kinds)]
    panels: list[list[int]] = []
    for _ in range(sheets):
        panels += split(rng, *rng.choice(sizes), parts, 20)
    stock = [Sheet(f"s{i}", w, h, 2 * sheets) for i, (w, h) in enumerate(sizes)]
    return stock, _as_pieces(rng, panels, turn)


def planted_remnants(number: int, used: int, spare: int, parts: int, *, turn: bool) -> Task:
    """Pieces from ``used`` odd remnants without waste, ``spare`` more on the shelf."""
    rng = random.Random(f"odd {number} {used} {spare} {parts}")
    sizes = [(rng.randint(120, 600), rng.randint(120, 600)) for _ in range(used + spare)]
    panels: list[list[int]] = []
    for width, height in sizes[:used]:
        panels += split(rng, width, height, parts, 20)
    rng.shuffle(sizes)
    stock = [Sheet(f"r{i}", w, h, 1) for i, (w, h) in enumerate(sizes)]
    return stock, _as_pieces(rng, panels, turn)


def drawn_remnants(number: int, *, turn: bool) -> Task:
    """20 to 60 drawn pieces and odd remnants, one of each size; no plan without waste is known."""
    rng = random.Random(f"remnants {number}")
    pieces = [
        Piece(f"p{i}", rng.randint(20, 220), rng.randint(20, 220), 1, turn)
        for i in range(rng.choice((20, 30, 40, 50, 60)))
    ]
    area = rng.uniform(1.5, 2.2) * sum(piece.width * piece.height for piece in pieces)
    stock = [Sheet("large", 400, 400, 1)]
    while sum(sheet.width * sheet.height for sheet in stock) < area:
        stock.append(Sheet(f"r{len(stock)}", rng.randint(120, 600), rng.randint(120, 600), 1))
    return stock, pieces


def mixed_classes(group: int, items: int, number: int, *, turn: bool) -> Task:
    """Variable-sized: drawn pieces on five sheet sizes between one third and the whole.

    Five bin types as in D. Pisinger and M. Sigurd, "The two-dimensional bin packing problem with
    variable bin sizes and costs", Discrete Optimization 2 (2005), pp. 154-167 (from memory).
    """
    rng = random.Random(f"mixed class {group} {items} {number}")
    _, pieces = classical(group, items, number, turn=turn)
    side = _BIN[group]
    sizes = [(side, side)] + [
        (rng.randint(side // 2, side), rng.randint(side // 2, side)) for _ in range(4)
    ]
    return [Sheet(f"s{i}", w, h, items) for i, (w, h) in enumerate(sizes)], pieces


def many_equal(number: int, *, turn: bool) -> Task:
    """Ten to thirty kinds of 1 to 100 equal pieces, each side a quarter to three quarters.

    The make-up of sizes follows J. E. Beasley, "Algorithms for unconstrained two-dimensional
    guillotine cutting", Journal of the Operational Research Society 36 (1985), pp. 297-306
    (from memory); the drawings and the counts are ours.
    """
    rng = random.Random(f"gg {number}")
    side, kinds = (250, 500, 1000)[number % 3], (10, 20, 30)[number // 3 % 3]
    pieces = []
    for index in range(kinds):
        width, height = (rng.randint(side // 4, 3 * side // 4) for _ in range(2))
        pieces.append(Piece(f"p{index}", width, height, rng.randint(1, 100), turn))
    return [Sheet("s", side, side, 3000)], pieces


def few(task: Task, count: int) -> Task:
    """The same task with only ``count`` sheets of each size."""
    sheets, pieces = task
    return [Sheet(s.name, s.width, s.height, count) for s in sheets], pieces


def folio_case() -> Task:
    """400 equal folios, 30 boards and patches, 12 sheet sizes."""
    rng = random.Random("folio case")
    pieces = [Piece("folio", 300, 205, 400, False)]
    for index in range(30):
        pieces.append(
            Piece(f"patch {index}", rng.randint(20, 220), rng.randint(20, 300), 1, index % 3 > 0)
        )
    sheets = [
        Sheet(f"size {i}", rng.randint(300, 800), rng.randint(250, 1000), 20 + 5 * i)
        for i in range(12)
    ]
    return sheets, pieces


def different(items: int) -> Task:
    """``items`` different pieces on four sheet sizes."""
    rng = random.Random(f"different {items}")
    pieces = [
        Piece(f"p{i}", rng.randint(30, 320), rng.randint(30, 320), 1, True) for i in range(items)
    ]
    sizes = [(700, 1000), (440, 600), (500, 700), (210, 297)]
    return [Sheet(f"s{i}", w, h, items) for i, (w, h) in enumerate(sizes)], pieces
