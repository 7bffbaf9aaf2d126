"""Many numbers side by side in one integer, so that one step works on all of them.

Each number has a field of bits with a guard bit on top that stays clear; a subtraction with the
guards set leaves them where the first number is not the smaller one. Source: Lamport, L. (1975),
"Multiple byte processing with full-word instructions", Communications of the ACM 18, pp. 471-475
(cited from memory).
"""

from __future__ import annotations

from collections.abc import Iterable
from struct import Struct

_WIDTHS = ((16, "H"), (32, "I"), (64, "Q"))


class Fields:
    """``size`` numbers from 0 to ``most`` in one integer, the first one lowest."""

    def __init__(self, size: int, most: int) -> None:
        self.width, letter = next(pair for pair in _WIDTHS if most >> (pair[0] - 1) == 0)
        self.bytes = size * self.width // 8
        self.ones = sum(1 << self.width * k for k in range(size))
        self.guards = self.ones << (self.width - 1)
        self._struct = Struct(f"<{size}{letter}")

    def pack(self, numbers: Iterable[int]) -> int:
        """The numbers in one integer."""
        return int.from_bytes(self._struct.pack(*numbers), "little")

    def unpack(self, packed: int) -> tuple[int, ...]:
        """The numbers of one integer."""
        return self._struct.unpack(packed.to_bytes(self.bytes, "little"))

    def larger(self, left: int, right: int) -> int:
        """Of each two numbers the larger one."""
        wins = ((left | self.guards) - right) & self.guards
        return right ^ ((left ^ right) & (wins - (wins >> (self.width - 1))))

    def smaller(self, left: int, right: int) -> int:
        """Of each two numbers the smaller one."""
        wins = ((left | self.guards) - right) & self.guards
        return left ^ ((left ^ right) & (wins - (wins >> (self.width - 1))))
