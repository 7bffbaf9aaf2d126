"""How long an operation takes at the bench, in whole minutes."""

from __future__ import annotations

import math

from foredge.contract import Book, Operation, Quantity


def whole_minutes(quantity: Quantity | None, factor: float = 1.0) -> int:
    """A time in minutes, rounded up; noise in the last bits never makes a minute."""
    if quantity is None:
        return 0
    return max(0, math.ceil(round(quantity.value * factor / 60, 6)))


def hands_on(book: Book, operation: Operation, copies: int) -> int:
    """Minutes at the bench for so many copies; what is done for all at once counts once."""
    slower = book.bench.slower.value if book.bench.slower is not None else 1.0
    times = 1 if operation.batch else copies
    return max(1, whole_minutes(operation.hands_on, slower * times))


def copies_of(book: Book) -> int:
    """How many books are made."""
    return round(book.copies.value)
