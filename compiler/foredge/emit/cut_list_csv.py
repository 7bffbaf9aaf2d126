"""``cut-list.csv``: every piece to cut, for a spreadsheet."""

from __future__ import annotations

import csv
import io

from foredge.contract import Build, Piece
from foredge.display import in_inches, in_mm
from foredge.emit.escape import one_line
from foredge.emit.plain_units import plain_number

_FORMULA_STARTS = ("=", "+", "-", "@", "\t", "\r")


class CutList:
    """``cut-list.csv``."""

    kind = "emitter"
    name = "cut-list"
    title = "Cut list in CSV"

    def emit(self, build: Build) -> dict[str, bytes]:
        """One line a piece, stage by stage in the order the stages give them."""
        inches = build.book.display in ("imperial", "both")
        out = io.StringIO()
        writer = csv.writer(out, lineterminator="\n")
        writer.writerow(_head(inches))
        for stage, result in build.stages:
            for piece in result.pieces:
                writer.writerow([guard(cell) for cell in _line(piece, stage.name, inches)])
        return {"cut-list.csv": out.getvalue().encode()}


def guard(cell: str) -> str:
    """``cell`` so that no spreadsheet takes it for a formula.

    Source: OWASP, CSV Injection: cells that begin with = + - @ tab or CR are evaluated; a
    leading apostrophe keeps them text (from memory).
    """
    # The first character decides, so it is looked at before the text is put on one line.
    dangerous = cell.startswith(_FORMULA_STARTS) or one_line(cell).startswith(_FORMULA_STARTS)
    return ("'" if dangerous else "") + one_line(cell)


def _head(inches: bool) -> list[str]:
    sizes = ["width_mm", "height_mm"]
    if inches:
        sizes += ["width_in", "height_in"]
    rest = ["grain", "stock", "material", "shape", "state", "gates", "stage"]
    return ["piece", "title", "count", *sizes, *rest]


def _line(piece: Piece, stage: str, inches: bool) -> list[str]:
    sizes = [in_mm(piece.width), in_mm(piece.height)]
    if inches:
        sizes += [in_inches(piece.width), in_inches(piece.height)]
    gates = piece.count.gates | piece.width.gates | piece.height.gates
    state = "blank" if piece.blank else "provisional" if gates else "firm"
    return [
        piece.name,
        piece.title,
        str(plain_number(piece.count.value, piece.count.dimension)),
        *sizes,
        piece.grain,
        piece.stock or "",
        piece.material,
        "; ".join(filter(None, (piece.shape, piece.trimmed_to and f"trim to {piece.trimmed_to}"))),
        state,
        " ".join(sorted(gates)),
        stage,
    ]
