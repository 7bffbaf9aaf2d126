"""Sheets that are to look old: dipped in tea or coffee, dried, pressed flat."""

from __future__ import annotations

from foredge.contract import Book, Operation, Quantity, Wetting, dry_in_room, say


def age_sheets(
    book: Book, operation: str, stock: str, brew: str, sheets: Quantity, after: tuple[str, ...]
) -> Operation:
    """The operation that ages ``sheets`` pieces of ``stock`` in ``brew``.

    Damp sheets cockle as they are folded, and go mouldy where they are bound (common practice).
    """
    dry = dry_in_room(book, book.table("drying", "aged-sheet", "next"))
    heat = book.default("oven-bare")
    return Operation(
        operation,
        f"Age {stock} in {brew}",
        (
            say(f"Brew strong {brew}, strain it, and let it cool until a finger bears it."),
            say("Dip the sheets one by one, and hold each by a corner until it drips no more."),
            say("Lay them flat on a rack. Browner: 5 to 10 min in the oven at {heat}, watched.",
                heat=heat),
            say("When they are dry, press them between blotters over night; then cut and fold."),
            say("A sheet that still feels cool is damp: it cockles, and goes mouldy in the book."),
        ),
        book.practice("hand-set-up") + sheets * book.practice("hand-cut"),
        after=after,
        wait=dry,
        waiting="flat and airy, then between blotters under weight",
        cautions=("boiling-water", "iron-heat", "food-tools"),
        wettings=(Wetting(f"sheets of {stock}", "both", None, dry),),
        tools=("flat tray kept for craft", "rack", "blotters", "weights", "oven gloves"),
        splits=True,
    )  # fmt: skip
