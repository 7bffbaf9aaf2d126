"""What the server shows: the last good build, and what is wrong since then."""

from __future__ import annotations

import threading
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class Shown:
    """``files`` of the last good build, by path; ``problems`` of the last one, as text.

    ``turn`` goes up with every build, ``page`` with every build that gave files.
    """

    turn: int = 0
    page: int = 0
    files: Mapping[str, bytes] = field(default_factory=dict)
    problems: tuple[str, ...] = ()


class Board:
    """Holds what is shown; one thread puts it there, many wait for the next."""

    def __init__(self) -> None:
        self._shown = Shown()
        self._changed = threading.Condition()
        self._closed = False

    @property
    def shown(self) -> Shown:
        """What is shown now."""
        with self._changed:
            return self._shown

    def put(self, files: Mapping[str, bytes] | None, problems: Sequence[str]) -> None:
        """Show ``files``; without them keep the last good ones, and tell ``problems``."""
        with self._changed:
            last = self._shown
            good = files is not None
            self._shown = Shown(
                last.turn + 1,
                last.page + good,
                last.files if files is None else dict(files),
                tuple(problems),
            )
            self._changed.notify_all()

    def wait(self, turn: int, seconds: float) -> Shown | None:
        """What is shown once it is newer than ``turn``; None when the time is up or all ends."""
        with self._changed:
            self._changed.wait_for(lambda: self._closed or self._shown.turn != turn, seconds)
            return None if self._closed or self._shown.turn == turn else self._shown

    def close(self) -> None:
        """Let everybody who waits go."""
        with self._changed:
            self._closed = True
            self._changed.notify_all()

    @property
    def closed(self) -> bool:
        """Whether it is over."""
        return self._closed
