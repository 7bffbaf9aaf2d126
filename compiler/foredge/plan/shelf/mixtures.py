"""What a mixture is made of: a maker buys white glue and flour, not the mix of both."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from foredge.contract import MASS, VOLUME, Build, Quantity, total
from foredge.plan.shelf.claims import Claim
from foredge.plan.shelf.convert import converted, density_of
from foredge.plan.shelf.names import rows_called, stock_for
from foredge.tables import Row

WATER = "water"
"""Out of the tap: it is on nobody's shelf."""

GLUE = "pva"
MIXED = "(in a mixture)"

_PARTS_OF = ("adhesives", "ingredients")


def taken_apart(build: Build, claim: Claim) -> Iterator[Claim]:
    """``claim``, or the parts of the mixture it is of; water is left out.

    Parts are by volume. A mixture that stands ready-made on the shelf is taken from there.
    """
    if claim.stock is not None or stock_for(build, claim.material) is not None:
        yield claim
        return
    rows = rows_called(build.tables, claim.material)
    if any(row.name == WATER for row in rows):
        return
    thinned = _thinned(build, claim, rows)
    if thinned is not None:
        yield thinned
        return
    mixed = next((row for row in rows if row.table == "adhesives" and row.group("parts")), None)
    amount = None
    if mixed is not None:
        amount = converted(build, claim.material, None, claim.amount, MASS)
    if mixed is None or amount is None:
        yield claim
        return
    for name, share in _shares(build, mixed):
        part = replace(claim, material=name, amount=amount * share, note=_note(claim))
        yield from taken_apart(build, part)


def _thinned(build: Build, claim: Claim, rows: Sequence[Row]) -> Claim | None:
    """The white glue in a sealer that is glue thinned with water; None for all else."""
    sealer = next(
        (row for row in rows if row.text("key") == GLUE and row.maybe("dilution") is not None),
        None,
    )
    if sealer is None or claim.amount.dimension != VOLUME:
        return None
    water = build.book.table(sealer.table, sealer.name, "dilution")
    glue = claim.amount / (1 + water) * build.book.table("adhesives", GLUE, "density")
    return replace(claim, material=_title(build, GLUE), amount=glue, note=_note(claim))


def _shares(build: Build, mixed: Row) -> Iterator[tuple[str, Quantity]]:
    """Title and share of the mass of each part."""
    masses = []
    for name in mixed.group("parts"):
        density = density_of(build, name)
        part = build.book.table("adhesives", mixed.name, f"parts.{name}")
        if density is None:
            return
        masses.append((_title(build, name), part * density))
    whole = total([mass for _, mass in masses])
    for title, mass in masses:
        yield title, mass / whole


def _title(build: Build, name: str) -> str:
    rows = [row for row in rows_called(build.tables, name) if row.name == name]
    known = [row for table in _PARTS_OF for row in rows if row.table == table]
    return known[0].title if known else name


def _note(claim: Claim) -> str:
    """What it is for, and that it goes there in a mixture."""
    told = claim.note.removesuffix(MIXED).strip()
    return f"{told} {MIXED}".strip()
