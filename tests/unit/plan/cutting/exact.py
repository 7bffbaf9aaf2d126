"""Exact references for small tasks: every guillotine shape of every set of pieces."""

from __future__ import annotations

from collections.abc import Iterable

from ortools.sat.python import cp_model

from foredge.plan.cutting import Piece, Sheet

Shape = tuple[float, float]


def shapes_of(pieces: list[Piece], most: Shape) -> list[list[Shape]]:
    """For each set of pieces (a bit mask) its least guillotine boxes within ``most``."""
    table: list[list[Shape]] = [[]]
    for mask in range(1, 1 << len(pieces)):
        found: set[Shape] = set()
        if mask & (mask - 1) == 0:
            piece = pieces[mask.bit_length() - 1]
            found.add((piece.width, piece.height))
            if piece.turn:
                found.add((piece.height, piece.width))
        part = (mask - 1) & mask
        while part > mask ^ part:
            for w, h in table[part]:
                for v, g in table[mask ^ part]:
                    found.add((w + v, max(h, g)))
                    found.add((max(w, v), h + g))
            part = (part - 1) & mask
        table.append(
            _least(shape for shape in found if shape[0] <= most[0] and shape[1] <= most[1])
        )
    return table


def _least(shapes: Iterable[Shape]) -> list[Shape]:
    kept: list[Shape] = []
    for shape in sorted(shapes):
        if not kept or shape[1] < kept[-1][1]:
            kept.append(shape)
    return kept


def least_area(sheets: list[Sheet], pieces: list[Piece]) -> float | None:
    """The smallest sheet area that holds all pieces, by CP-SAT over all sets; or None."""
    most = (max(s.width for s in sheets), max(s.height for s in sheets))
    table = shapes_of(pieces, most)
    model = cp_model.CpModel()
    covers: list[list[cp_model.IntVar]] = [[] for _ in pieces]
    cost = []
    for sheet in sheets:
        used = []
        for mask in range(1, len(table)):
            if any(w <= sheet.width and h <= sheet.height for w, h in table[mask]):
                chosen = model.new_bool_var("")
                used.append(chosen)
                for index, cover in enumerate(covers):
                    if mask >> index & 1:
                        cover.append(chosen)
        model.add(sum(used) <= sheet.count)
        cost.append(int(sheet.width * sheet.height) * sum(used))
    for cover in covers:
        model.add_exactly_one(cover)
    model.minimize(sum(cost))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    if solver.solve(model) != cp_model.OPTIMAL:
        return None
    return solver.objective_value
