"""The cutting plan told cut by cut, and what the left-overs are good for."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, CutSheet, Flat, Piece
from foredge.dimension import LENGTH
from foredge.display import show, show_size
from foredge.emit.escape import escape
from foredge.emit.words import PROVISIONAL
from foredge.plan.cutting import OffCut, Part, Sheet, too_large
from foredge.plan.sheets.pool import lying, ways_of
from foredge.plan.sheets.runs import Run, runs_of
from foredge.quantity import Origin, Quantity, leaf
from foredge.spec.words import listed

_PLAN = Origin("plan", text="the cutting plan")
_SIDES = {"x": ("left", "right"), "y": ("upper", "lower")}
_WAYS = {"x": ("cut down", "its left"), "y": ("cut across", "its head")}


@dataclass(frozen=True, slots=True)
class CutLine:
    """Like cuts told together: ``number`` (``4`` or ``4 to 9``) is that of the picture."""

    number: str
    text: str


@dataclass(frozen=True, slots=True)
class CutView:
    """One way to cut up a sheet, ready to be printed.

    ``key`` names its drawing. ``lines`` are the cuts in order, like ones together; ``left``
    are the off-cuts with what they are good for. ``state`` says that a gate
    must be measured first, or nothing.
    """

    key: str
    stock: str
    title: str
    about: str
    state: str
    gives: str
    lines: tuple[CutLine, ...]
    left: tuple[str, ...]


def cut_views(build: Build) -> tuple[CutView, ...]:
    """Every sheet of the plan in the order in which it is cut."""
    uses = room_for(build)
    return tuple(_view(build, sheet, uses) for sheet in build.plan.cutting.sheets)


def sheet_key(sheet: CutSheet) -> str:
    """The name of a sheet's drawing, fit for a file."""
    return "cutting-" + sheet.name.replace(" ", "-").replace(".", "-").lower()


def sheet_title(sheet: CutSheet) -> str:
    """``chart-paper, sheets 1 to 20, all alike``."""
    if sheet.of:
        head, _, letters = sheet.of.rpartition(" ")
        return f"{head}, off-cut {letters}"
    stock, _, first = sheet.name.rpartition(" ")
    if sheet.same == 1:
        return f"{stock}, sheet {first}"
    return f"{stock}, sheets {first} to {int(first) + sheet.same - 1}, all alike"


def millimetres(value: float) -> Quantity:
    """A place on a sheet of the plan as a quantity."""
    return leaf(value, LENGTH, "cutting plan", _PLAN)


def pieces_by_name(build: Build) -> dict[str, Piece]:
    """The book's pieces by name."""
    return {piece.name: piece for piece in build.whole.pieces}


def room_for(build: Build) -> dict[str, list[Piece]]:
    """Off-cut (``tea-cartons 1A``) -> pieces whose stuff the maker chooses that fit in it.

    Each piece is offered once, in the smallest off-cut that holds it.
    """
    free = [piece for piece in build.whole.pieces if piece.stock is None and piece.kinds]
    spots = sorted(_spots(build), key=lambda spot: (spot[2].area, spot[0]))
    found: dict[str, list[Piece]] = {}
    for piece in free:
        for name, item, off in spots:
            kind = str(type(item).__struct_config__.tag)
            if kind in piece.kinds and name not in found and _fits(piece, item, off):
                found.setdefault(name, []).append(piece)
                break
    return found


def _spots(build: Build) -> list[tuple[str, Flat, OffCut]]:
    cutting = build.plan.cutting
    used = {sheet.of for sheet in cutting.sheets}
    spots = []
    for sheet in cutting.sheets:
        item = build.book.stock[sheet.stock]
        assert isinstance(item, Flat)
        for off in sheet.layout.off_cuts:
            if sheet.name + off.name not in used:
                spots.append((sheet.name + off.name, item, off))
    return spots


def _fits(piece: Piece, item: Flat, off: OffCut) -> bool:
    sheet = Sheet(off.name, off.width, off.height, 1)
    sides = piece.width.value, piece.height.value
    return any(too_large([sheet], lying(piece, way, sides)) is None for way in ways_of(item))


def _view(build: Build, sheet: CutSheet, uses: dict[str, list[Piece]]) -> CutView:
    item = build.book.stock[sheet.stock]
    assert isinstance(item, Flat)
    system = build.book.display
    layout = sheet.layout
    sides = millimetres(layout.sheet.width), millimetres(layout.sheet.height)
    about = [show_size(*sides, system)]
    if item.grain != "unknown":
        about.append(f"grain along the {item.grain}")
    if item.kerf is not None and item.kerf.value > 0:
        about.append(f"each cut takes {show(item.kerf, system)} beyond its line")
    if sheet.bought:
        about.append("not on the shelf: to be bought")
    gates = sorted(sheet.gates)
    return CutView(
        key=sheet_key(sheet),
        stock=sheet.stock,
        title=escape(sheet_title(sheet)),
        about=escape(", ".join(about)),
        state=f"provisional ({', '.join(gates)}): do not cut yet" if gates else "",
        gives=_gives(build, sheet),
        lines=tuple(_Teller(build, sheet).lines()),
        left=tuple(_left(build, sheet, off, uses) for off in layout.off_cuts),
    )


def _gives(build: Build, sheet: CutSheet) -> str:
    """``2 Folio, 1 Super`` from one sheet."""
    pieces = pieces_by_name(build)
    counted: dict[str, int] = {}
    for placement in sheet.layout.placements:
        counted[placement.piece.name] = counted.get(placement.piece.name, 0) + 1
    return escape(", ".join(f"{count} × {pieces[name].title}" for name, count in counted.items()))


def _left(build: Build, sheet: CutSheet, off: OffCut, uses: dict[str, list[Piece]]) -> str:
    name = sheet.name + off.name
    size = show_size(millimetres(off.width), millimetres(off.height), build.book.display)
    told = f"{off.name}: {size}"
    later = [other for other in build.plan.cutting.sheets if other.of == name]
    if later:
        return escape(f"{told}, cut up later for {_named(build, later)}")
    if name in uses:
        titles = listed(f"the {piece.title.lower()}" for piece in uses[name])
        return escape(f"{told}, room for {titles}")
    return escape(told)


def _named(build: Build, sheets: list[CutSheet]) -> str:
    pieces = pieces_by_name(build)
    names = dict.fromkeys(
        placement.piece.name for sheet in sheets for placement in sheet.layout.placements
    )
    return listed(f"the {pieces[name].title.lower()}" for name in names)


class _Teller:
    """Tells the cuts of one sheet, run by run."""

    def __init__(self, build: Build, sheet: CutSheet) -> None:
        self._system = build.book.display
        self._pieces = pieces_by_name(build)
        self._layout = sheet.layout
        self._whole = "The off-cut" if sheet.of else "The whole sheet"
        self._mark = f"{PROVISIONAL} " if sheet.gates else ""
        self._runs = runs_of(sheet.layout)

    def lines(self) -> list[CutLine]:
        """A line a run; none where the whole sheet is the piece."""
        return [
            CutLine(_numbers(run), escape(f"{self._panel(place)}: {self._cut(run)}"))
            for place, run in enumerate(self._runs)
        ]

    def _panel(self, place: int) -> str:
        run = self._runs[place]
        if run.parent is None:
            return self._whole
        parent = self._runs[run.parent]
        last = run.parent == place - 1
        cuts = f"cut{'s' * (len(parent.cuts) > 1)}"
        of = f"the last {cuts}" if last else f"{cuts} {_numbers(parent)}"
        first, second = _SIDES[parent.cuts[0].axis]
        if run.where == "strips":
            if run.panels == 2 and len(parent.cuts) == 1:
                return f"Both parts of {of}"
            return f"Each of the {run.panels} strips of {of}"
        side = first if run.where == "first" else second
        one, many = ("rest beyond", "rests beyond")
        if parent.times == 1:
            one, many = f"{side} part of", f"{side} parts of"
        return f"The {one} {of}" if run.panels == 1 else f"Each of the {run.panels} {many} {of}"

    def _cut(self, run: Run) -> str:
        at = self._mark + show(millimetres(run.cuts[0].at), self._system)
        way, edge = _WAYS[run.cuts[0].axis]
        first, second = (side.capitalize() for side in _SIDES[run.cuts[0].axis])
        if run.times == 1:
            told = f"{way}, {at} from {edge}."
            if run.even:
                return told + self._part("Both parts", run.first)
            return told + self._part(first, run.first) + self._part(second, run.rest)
        times = "twice" if run.times == 2 else f"{run.times} times"
        told = f"{way} {times}, each time {at} from {edge}."
        if run.even:
            return told + self._part("Each part, the last too", run.first)
        return told + self._part("Each part", run.first) + self._part("Beyond", run.rest)

    def _part(self, side: str, part: Part) -> str:
        if part.placement is not None:
            piece = self._layout.placements[part.placement].piece
            return f" {side}: {self._pieces[piece.name].title.lower()}."
        if part.off_cut is not None:
            return f" {side}: off-cut {part.off_cut}."
        return "" if part.next_cut is not None else f" {side}: waste."


def _numbers(run: Run) -> str:
    """``4`` or ``4 to 9``."""
    first, last = run.cuts[0].order, run.cuts[-1].order
    return str(first) if first == last else f"{first} to {last}"
