"""What is wrong with cutting: pieces too large, grain not known, marks beside the sheet."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from foredge.contract import (
    Build,
    Cutting,
    Face,
    Flat,
    Homeless,
    Path,
    Piece,
    Problem,
    error,
    faces,
    note,
    warning,
)
from foredge.contract.stock import stock_path
from foredge.plan.cutting import Sheet, TooLarge, too_large
from foredge.plan.sheets.pool import lying, pool_of, ways_of
from foredge.plan.sheets.prices import partly_priced

SLACK_MM = 1e-6


def cutting_problems(build: Build, cutting: Cutting) -> list[Problem]:
    """Everything there is to say about the shelf's sheets and what is cut from them."""
    found = [problem for one in cutting.homeless for problem in _homeless(build, one)]
    for name, item in build.book.stock.items():
        if isinstance(item, Flat):
            found += _beside(name, item)
            found += _grain_unknown(build, name, item)
            found += _partly_priced(cutting, name, item)
    return found


def _homeless(build: Build, lost: Homeless) -> Iterator[Problem]:
    """An error where even the small end of the band does not fit, else a warning."""
    item = build.book.stock[lost.stock]
    piece = next(one for one in build.whole.pieces if one.name == lost.piece)
    assert isinstance(item, Flat)
    low = build.band(piece.width).low, build.band(piece.height).low
    smallest = _too_large(build, lost, item, piece, low)
    tell = error if smallest is not None else warning
    nominal = _too_large(build, lost, item, piece, (piece.width.value, piece.height.value))
    yield tell(
        stock_path(lost.stock),
        f"the {piece.title.lower()} is {_size(piece.width.value)} by {_size(piece.height.value)} mm"
        f"{_short(lost.stock, item, nominal)}",
        "piece-larger-than-stock",
        consequence="It cannot be cut in one piece",
        remedy="Take a larger sheet or cloth, or make the book smaller",
        source="geometry",
        on_key=True,
    )


def _too_large(
    build: Build, lost: Homeless, item: Flat, piece: Piece, sides: tuple[float, float]
) -> TooLarge | None:
    found = []
    for grain in ways_of(item):
        pool = pool_of(build, lost.stock, item, grain)
        wanted = lying(piece, grain, sides)
        sheets = [
            Sheet(one.name, one.width, one.height, 1, keep_out=pool.zones(one, [wanted]))
            for one in pool.sheets
        ]
        found.append(too_large(sheets, wanted))
    if None in found:
        return None
    return min(
        (one for one in found if one is not None),
        key=lambda one: one.short_width + one.short_height,
    )


def _size(amount_mm: float) -> str:
    """To a tenth, and never as a power of ten; less than a millimetre in two figures."""
    return f"{amount_mm:.1f}".removesuffix(".0") if amount_mm >= 1 else f"{amount_mm:.2g}"


def _short(stock: str, item: Flat, lack: TooLarge | None) -> str:
    """``, and 'apron' is 400 by 300 mm: it lacks 57 mm in width``."""
    sides = f"{_size(item.width.value)} by {_size(item.height.value)} mm"
    known = item.grain != "unknown"
    grain = f" with its grain along the {item.grain}" if known else ""
    told = f", and '{stock}' is {sides}{grain}"
    if item.more:
        told = f", and no size of '{stock}' has room for it"
    if lack is None:
        return told
    lacks = [
        f"{_size(amount)} mm in {side}"
        for amount, side in ((lack.short_width, "width"), (lack.short_height, "height"))
        if amount > SLACK_MM
    ]
    if not lacks:
        return f"{told}; its spoiled places and creases leave no room for it"
    return f"{told}: it lacks {' and '.join(lacks)}"


def _grain_unknown(build: Build, name: str, item: Flat) -> Iterable[Problem]:
    """A warning where the grain matters and is not known. Folios have their own."""
    strict = [
        piece
        for piece in build.whole.pieces
        if piece.stock == name and piece.grain != "any" and not piece.over_crease
    ]
    if item.grain != "unknown" or not strict:
        return ()
    titles = ", ".join(dict.fromkeys(piece.title.lower() for piece in strict))
    return (
        warning(
            stock_path(name),
            f"the grain of '{name}' is not known, and it matters for: {titles}",
            "grain-unknown",
            consequence="Across the spine it warps boards and cockles paper",
            remedy="Test it (bend, tear or damp a strip; a cloth's warp hardly stretches) and "
            "write grain: width or height",
            source="Skin Deep vol. 10 (J. Hewit & Sons), on paper grain",
            on_key=True,
        ),
    )


def _partly_priced(cutting: Cutting, name: str, item: Flat) -> Iterator[Problem]:
    """A note where prices cannot choose the sheets, since some sizes have none."""
    found = partly_priced(faces(item))
    if found is None or not any(need.stock == name for need in cutting.needs):
        return
    sizes = ", ".join(
        f"{_size(face.width.value)} by {_size(face.height.value)} mm" for face in found[False]
    )
    yield note(
        stock_path(name),
        f"'{name}' has no price for {sizes}: it is laid out for the least area, not the least "
        "money",
        "sheets-partly-priced",
        consequence="A dear sheet may be cut up where a cheap one would do",
        remedy="Give every size its price, 0 for what was found; or none of them",
        on_key=True,
    )


def _beside(name: str, item: Flat) -> Iterator[Problem]:
    """A warning for each spoiled place or crease that is not on its sheet at all."""
    for face in faces(item):
        start: Path = (
            stock_path(name) if face.place == 0 else (*stock_path(name), "more", face.place - 1)
        )
        for place, zone in enumerate(face.keep_out):
            if not _on(face, zone.x.value, zone.y.value):
                yield _off_sheet((*start, "keep_out", place), "place to keep out of", name)
        for place, crease in enumerate(face.creases):
            side = face.width if crease.along == "height" else face.height
            if crease.at.value >= side.value:
                yield _off_sheet((*start, "creases", place), "crease", name)


def _on(face: Face, x_mm: float, y_mm: float) -> bool:
    return x_mm < face.width.value and y_mm < face.height.value


def _off_sheet(path: Path, what: str, name: str) -> Problem:
    return warning(
        path,
        f"this {what} lies beside the sheet '{name}', not on it",
        "mark-beside-sheet",
        consequence="It keeps nothing out, and a piece may be cut where it really is",
        remedy="Measure it from the left and the head of the sheet",
        source="geometry",
    )
