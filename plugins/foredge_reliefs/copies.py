"""What scatter and repeat have in common: many copies of one nested part."""

from __future__ import annotations

from foredge.contract import (
    LENGTH,
    MOST_PIECES,
    Origin,
    Problem,
    Quantity,
    ReliefJob,
    error,
    leaf,
    option_path,
)


def length(value_mm: float) -> Quantity:
    """A length out of a computation that is not recorded step by step, such as a seeded throw."""
    return leaf(value_mm, LENGTH, "relief.copy", Origin("constant"))


def too_many(job: ReliefJob, copies: int, solids: int, key: str) -> list[Problem]:
    """An error where the copies have more solids together than a panel may hold."""
    if copies * solids <= MOST_PIECES:
        return []
    each = "" if solids == 1 else f" of {solids} solids each"
    return [
        error(
            option_path(job, key),
            f"{copies} copies{each} are more than the {MOST_PIECES} solids a panel may hold",
            "relief-too-many-parts",
            consequence="Nobody models so many by hand, and the computing would take minutes",
            remedy="Make fewer, and treat the rest as a texture",
        )
    ]
