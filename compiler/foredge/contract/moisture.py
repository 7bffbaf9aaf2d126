"""What is wetted, on which side, when it is dry, and how the pulls on a board balance."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from foredge.quantity import Quantity

Side = Literal["inside", "outside", "both", "edge"]


@dataclass(frozen=True, slots=True)
class Wet:
    """Water that ``operation`` brings to one side of ``what`` (``board-front``), in one book.

    ``water`` is a mass, None where it is little and no table knows how much. ``dry_after`` is
    a time, counted from the end of the operation. ``one_way``: it dries from its free face
    only, what lies under it takes no water.
    """

    operation: str
    what: str
    side: Side
    water: Quantity | None
    dry_after: Quantity
    one_way: bool = False


@dataclass(frozen=True, slots=True)
class Ready:
    """When the work is dry enough for ``step``: ``wait`` after the end of ``operation``."""

    step: Literal["cover", "paint", "close", "post"]
    operation: str
    wait: Quantity | None = None


@dataclass(frozen=True, slots=True)
class OneSided:
    """Wet clay on one side of ``what``, and nothing on the other that pulls against it.

    ``operation`` is the first that brings it, ``water`` that of all of them.
    """

    what: str
    operation: str
    water: Quantity


@dataclass(frozen=True, slots=True)
class Damp:
    """Wet clay that something will shut in.

    ``what`` is the panel; ``wetted`` the last operation that brings water, ``wait`` how long
    that dries, ``test`` the operation that finds out. ``shut_by`` are the operations that
    close it up, in the order of work.
    """

    what: str
    wetted: str
    wait: Quantity
    test: str
    shut_by: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Layer:
    """Something glued to a face of a board.

    ``pull`` is its weight in the balance, one sheet of paper over the whole board being 1.
    """

    title: str
    operation: str
    pull: Quantity


@dataclass(frozen=True, slots=True)
class Balance:
    """What pulls on the two faces of a board (``board-front``)."""

    what: str
    outside: tuple[Layer, ...]
    inside: tuple[Layer, ...]
    pull_outside: Quantity
    pull_inside: Quantity

    @property
    def excess(self) -> float:
        """By how much the outside pulls more; negative where the inside does."""
        return self.pull_outside.value - self.pull_inside.value


@dataclass(frozen=True, slots=True)
class Moisture:
    """The moisture ledger of one book, in the order of work."""

    wettings: tuple[Wet, ...] = ()
    ready: tuple[Ready, ...] = ()
    one_sided: tuple[OneSided, ...] = ()
    damp: tuple[Damp, ...] = ()
    balance: tuple[Balance, ...] = ()
