"""An amount of a material in the dimension of its shelf: mass by density, area by width."""

from __future__ import annotations

from foredge.contract import (
    AREA,
    DENSITY,
    LENGTH,
    MASS,
    RATIO,
    VOLUME,
    Build,
    Dimension,
    Flat,
    Quantity,
    StockItem,
    Tape,
)
from foredge.plan.shelf.names import rows_called

_DENSITIES = (
    ("adhesives", "density"),
    ("ingredients", "density"),
    ("clays", "wet_density"),
)
NAMES = {
    MASS: "mass",
    VOLUME: "volume",
    LENGTH: "length",
    AREA: "area",
    RATIO: "number",
}


def converted(
    build: Build, material: str, item: StockItem | None, amount: Quantity, to: Dimension
) -> Quantity | None:
    """``amount`` in dimension ``to``; None where nothing known leads there."""
    if amount.dimension == to:
        return amount
    pair = (amount.dimension, to)
    if pair in ((MASS, VOLUME), (VOLUME, MASS)):
        density = density_of(build, material)
        if density is None:
            return None
        return amount / density if to == VOLUME else amount * density
    if pair == (AREA, LENGTH) and isinstance(item, Tape):
        return amount / item.width
    if pair == (AREA, RATIO) and isinstance(item, Flat):
        return amount / (item.width * item.height)
    return None


def density_of(build: Build, material: str) -> Quantity | None:
    """The density of ``material`` out of the first table that has one."""
    rows = rows_called(build.tables, material)
    for table, figure in _DENSITIES:
        for row in rows:
            if row.table == table and row.maybe(figure) is not None:
                found = build.book.table(table, row.name, figure)
                assert found.dimension == DENSITY
                return found
    return None
