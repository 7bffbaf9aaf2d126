"""Waiting for saves. Needs watchfiles, the extra ``watch``."""

from __future__ import annotations

import threading
from collections.abc import Callable
from pathlib import Path as FilePath

from watchfiles import watch

DEBOUNCE_MS = 150
"""Saves that follow one another this closely are one: an editor writes more than once."""


def on_save(
    files: Callable[[], frozenset[FilePath]],
    act: Callable[[], object],
    stop: threading.Event | None = None,
) -> None:
    """Call ``act`` whenever one of ``files()`` was saved, until ``stop`` or Ctrl-C.

    Folders are watched, not files: many editors save by putting a new file in the old one's
    place. What must be watched is asked again after each save. Raises KeyboardInterrupt.
    """
    stop = stop or threading.Event()
    while not stop.is_set():
        wanted = files()
        real = {place.resolve() for place in wanted}
        folders = {folder for place in (*wanted, *real) if (folder := place.parent).is_dir()}

        def ours(
            _: object, path: str, known: frozenset[FilePath] = frozenset(wanted | real)
        ) -> bool:
            place = FilePath(path)
            return place in known or place.resolve() in known

        for _ in watch(
            *sorted(folders),
            watch_filter=ours,
            stop_event=stop,
            debounce=DEBOUNCE_MS,
            step=30,
            recursive=False,
        ):
            act()
            if files() != wanted:
                break
