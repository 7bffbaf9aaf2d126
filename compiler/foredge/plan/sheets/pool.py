"""What is cut from one stock item: its sheets and pieces in the engine's own terms."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, Face, Flat, Piece, faces
from foredge.plan.cutting import Piece as CutPiece, Rect, Sheet
from foredge.plan.sheets.prices import weights
from foredge.quantity import Quantity


@dataclass(frozen=True, slots=True)
class Wanted:
    """A piece for the engine, lying as the grain asks, and what the book says of it.

    ``gates`` are those it waits for; ``later`` says that its size rests on a gate, measured
    or not, so that it is cut after those that do not.
    """

    piece: CutPiece
    source: Piece
    gates: frozenset[str]
    later: bool


@dataclass(frozen=True, slots=True)
class Pool:
    """``sheets`` are of ``item``'s sizes in order, without zones; ``wanted`` its pieces.

    ``grain`` is the side of the sheets that the grain is taken to run along. The price of a
    sheet is its weight in the search (:mod:`foredge.plan.sheets.prices`), not its money.
    """

    stock: str
    item: Flat
    grain: str
    sheets: tuple[Sheet, ...]
    wanted: tuple[Wanted, ...]
    kerf_mm: float

    def rounds(self, *, together: bool = False) -> list[tuple[Wanted, ...]]:
        """Folios, then what else can be cut now, then what waits; the last two ``together``."""
        folios = [one for one in self.wanted if one.source.over_crease]
        rest = [one for one in self.wanted if not one.source.over_crease]
        now = [one for one in rest if not one.later or together]
        later = [one for one in rest if one.later and not together]
        return [tuple(part) for part in (folios, now, later) if part]

    def size_of(self, sheet: str) -> int:
        """The place of the size that the engine's sheet is of."""
        return [one.name for one in self.sheets].index(sheet)

    def zones(self, sheet: Sheet, pieces: list[CutPiece]) -> tuple[Rect, ...]:
        """Where nothing may be cut from ``sheet`` while ``pieces`` are: spoiled places, old
        creases unless all of them may lie over one, and the strip that brings one to a fold."""
        face = faces(self.item)[self.size_of(sheet.name)]
        names = {piece.name for piece in pieces}
        sources = [one.source for one in self.wanted if one.piece.name in names]
        found = face.zones()
        if all(piece.over_crease for piece in sources):
            return (*found, *_first_strip(face, sources, self.grain))
        return (*found, *face.crease_lines())

    def spoiled(self, sheet: str) -> tuple[Rect, ...]:
        """The places of the engine's sheet that no piece may be cut from at any time."""
        face = faces(self.item)[self.size_of(sheet)]
        return (*face.zones(), *face.crease_lines())


def _first_strip(face: Face, sources: list[Piece], grain: str) -> list[Rect]:
    """What is cut off first so that an old crease becomes a fold."""
    offsets = [piece.offset.value for piece in sources if piece.offset is not None]
    if not offsets or offsets[0] <= 0 or face.place:
        return []
    (piece,) = [piece for piece in sources if piece.offset is not None][:1]
    if _lies_turned(piece, grain):
        return [Rect(0.0, 0.0, face.width.value, offsets[0])]
    return [Rect(0.0, 0.0, offsets[0], face.height.value)]


def pool_of(build: Build, stock: str, item: Flat, grain: str) -> Pool:
    """Everything that is cut from ``item``, for all copies, its grain along ``grain``."""
    sources = [
        piece for piece in build.whole.pieces if piece.stock == stock and piece.count.value >= 1
    ]
    copies = int(build.book.copies.value)
    wanted = tuple(_wanted(piece, grain, copies) for piece in sources)
    most = sum(one.piece.count for one in wanted)
    shelf = faces(item)
    sheets = tuple(
        Sheet(
            f"{stock}/{face.place}",
            face.width.value,
            face.height.value,
            most if face.count is None else min(int(face.count.value), most),
            weight,
        )
        for face, weight in zip(shelf, weights(shelf), strict=True)
    )
    kerf = 0.0 if item.kerf is None else item.kerf.value
    return Pool(stock, item, grain, sheets, wanted, kerf)


def _wanted(piece: Piece, grain: str, copies: int) -> Wanted:
    sides = piece.width.value, piece.height.value
    sizes = (piece.count, piece.width, piece.height)
    gates = frozenset[str]().union(*(size.gates for size in sizes))
    return Wanted(
        lying(piece, grain, sides, int(piece.count.value) * copies),
        piece,
        gates,
        any(rests_on_gate(size) for size in sizes),
    )


def ways_of(item: Flat) -> tuple[str, ...]:
    """The sides that the grain of ``item`` may run along: both where it is not known."""
    return ("height", "width") if item.grain == "unknown" else (item.grain,)


def lying(piece: Piece, grain: str, sides: tuple[float, float], count: int = 1) -> CutPiece:
    """``piece`` for the engine with ``sides`` (mm), as it lies on a sheet with ``grain``."""
    width, height = sides[::-1] if _lies_turned(piece, grain) else sides
    return CutPiece(piece.name, width, height, count, piece.grain == "any")


def _lies_turned(piece: Piece, grain: str) -> bool:
    """Whether the grain asks for the piece to lie turned on the sheet."""
    return piece.grain not in ("any", grain)


def rests_on_gate(quantity: Quantity) -> bool:
    """Whether a gate's reading changes ``quantity``, taken or not. A blank is cut before."""
    stack, seen = [quantity], {id(quantity)}
    while stack:
        node = stack.pop()
        if node.op == "gate":
            return True
        if node.op == "blank":
            continue
        for arg in node.args:
            if id(arg) not in seen:
                seen.add(id(arg))
                stack.append(arg)
    return False
