"""What a row of the paints table, or the maker, says of one coat: amount, number and times."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Book,
    FinishOptions,
    Patch,
    Quantity,
    TableError,
    cited,
    dry_in_room,
    maximum,
    total,
)

CHOICE = "the maker's choice"
GEOMETRY = "geometry"


@dataclass(frozen=True, slots=True)
class Times:
    """``touch``: handled with care. ``next``: the next coat. ``close``: faces may touch.
    ``post``: they may be packed tight, by the slow end of the table."""

    touch: Quantity
    next: Quantity
    close: Quantity
    post: Quantity


@dataclass(frozen=True, slots=True)
class Amounts:
    """``area`` is coated, ``coat`` the volume of one coat, ``whole`` that of all with the spare.

    ``paint`` and ``water`` are what ``whole`` is mixed of; the same as ``whole`` and None
    where nothing is thinned.
    """

    area: Quantity
    coats: Quantity
    coat: Quantity
    whole: Quantity
    paint: Quantity
    water: Quantity | None
    film: Quantity

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """All that are named."""
        thinned = (self.paint, self.water) if self.water is not None else ()
        return (self.area, self.coats, self.coat, self.whole, *thinned)


def times(book: Book, row: str, options: FinishOptions) -> Times:
    """How long a coat of ``row`` dries in the book's own room; the label's times as they are."""
    touch, usual, close, post = (
        dry_in_room(book, book.table("paints", row, figure))
        for figure in ("touch", "next", "close", "close.high")
    )
    if options.close is not None:
        close = post = options.close
    return Times(touch, options.next if options.next is not None else usual, close, post)


def amounts(
    book: Book, key: str, title: str, row: str, options: FinishOptions, patch: Patch
) -> Amounts:
    """Area, volume of a coat and of all of them; a relief takes more than its area."""
    name, what = f"finishing.{key}", title.lower()
    area = _area(patch, options, f"{name}.area", what)
    coats, by = _coats(book, row, options)
    coats = coats.named(f"{name}.coats", label=f"coats, {what}", rule="as it covers", source=by)
    coat, by = _one_coat(book, row, options, patch)
    coat = coat.named(
        f"{name}.coat",
        label=f"one coat, {what}",
        rule="as measured" if options.one_coat is not None else
        "area by what a smooth one takes; a relief takes more than its area",
        source=by,
    )  # fmt: skip
    spare = book.practice("waste-paint")
    whole = maximum(coat * coats * (1 + spare), book.default("paint-least")).named(
        f"{name}.whole",
        label=f"all coats, {what}",
        rule="the coats and what stays in brush and pot, but no less than can be worked with",
        source=cited(spare),
    )
    paint, water = _mix(book, row, name, what, whole)
    film = book.practice("paint-dry-share") * coats * (coat / area)
    if water is not None:
        film = film * (paint / whole)
    return Amounts(area, coats, coat, whole, paint, water, film)


def _area(patch: Patch, options: FinishOptions, name: str, what: str) -> Quantity:
    whole = patch.area
    assert whole is not None  # the stage asks for no coat where there is nothing to coat
    if options.share is not None:
        whole = whole * options.share
    return whole.named(
        name,
        label=f"area, {what}",
        rule="its faces, and the real surface of a relief",
        source=GEOMETRY,
    )


def _coats(book: Book, row: str, options: FinishOptions) -> tuple[Quantity, str]:
    if options.coats is not None:
        return options.coats, CHOICE
    usual = book.table("paints", row, "coats")
    return usual, cited(usual)


def _one_coat(book: Book, row: str, options: FinishOptions, patch: Patch) -> tuple[Quantity, str]:
    if options.one_coat is not None:
        return options.one_coat, CHOICE
    coverage = book.table("paints", row, "coverage")
    source, parts = cited(coverage), []
    if patch.smooth is not None:
        parts.append(patch.smooth)
    if patch.raised is not None:
        more = book.practice("relief-paint-factor")
        parts.append(patch.raised * more)
        source = f"{source}; on a relief: {cited(more)}"
    coated = total(parts) * coverage
    return (coated if options.share is None else coated * options.share), source


def _mix(
    book: Book, row: str, name: str, what: str, whole: Quantity
) -> tuple[Quantity, Quantity | None]:
    try:
        thinned = book.table("paints", row, "dilution")
    except TableError:
        return whole, None
    by = {"rule": "parts of water to one of paint", "source": cited(thinned)}
    paint = (whole / (1 + thinned)).named(f"{name}.paint", label=f"paint, {what}", **by)
    water = (whole - paint).named(f"{name}.water", label=f"water, {what}", **by)
    return paint, water
