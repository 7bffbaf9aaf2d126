"""How long something dries in the room the spec describes."""

from __future__ import annotations

from foredge.contract.book import Book
from foredge.quantity import Quantity, choose, number

COOL_DEGREES = 16.0
"""Below this the drying times of the tables are too short. From memory, as their row says."""

DAMP = 0.65
"""Above this relative humidity they are too short, too. From memory, as their row says."""


def dry_in_room(book: Book, time: Quantity, *, shut: bool = False) -> Quantity:
    """``time`` of the tables (20 to 22 degC, 30 to 60 %) as the book's own room makes it.

    A damp room and a cool one lengthen it, a fan shortens it: but for what dries ``shut``
    in a press or under weight, where no fan reaches. What ``bench.room`` does not
    say is taken to be as in the tables.
    """
    room = book.bench.room
    if room.humidity is not None:
        damp = book.practice("climate-damp")
        time = time * choose(room.humidity, number(DAMP), damp, number(1))
    if room.temperature is not None:
        cool = book.practice("climate-cool")
        time = time * choose(number(COOL_DEGREES), room.temperature, cool, number(1))
    return time * book.practice("climate-fan") if room.fan and not shut else time


def dry_in_oven(book: Book, time: Quantity) -> Quantity:
    """``time`` of the tables in a slow oven instead: whatever air the room has."""
    return time * book.practice("climate-oven")
