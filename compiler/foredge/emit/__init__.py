"""Emitters read a Build and return files. They compute nothing about the book.

One emitter a file; each has ``kind``, ``name``, ``title`` and ``emit(build)`` -> relative path
-> bytes. Same build, same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import Build, Emitter
from foredge.emit.calendar_ics import BenchCalendarFile
from foredge.emit.cut_list_csv import CutList
from foredge.emit.html_page import BenchPage
from foredge.emit.markdown import BuildSheet
from foredge.emit.quantities_json import Quantities
from foredge.emit.shopping_csv import ShoppingList
from foredge.emit.stage_sheets import StageSheets
from foredge.emit.svg import Drawings
from foredge.emit.templates_pdf import Templates

EMITTERS: tuple[Emitter, ...] = (
    BuildSheet(),
    BenchPage(),
    StageSheets(),
    Quantities(),
    CutList(),
    BenchCalendarFile(),
    ShoppingList(),
    Drawings(),
    Templates(),
)
"""The emitters of every build, in the order they run."""


class EmitterError(ValueError):
    """An emitter that cannot do its work; nothing is written."""


def emit(build: Build, emitters: Sequence[Emitter] = EMITTERS) -> dict[str, bytes]:
    """Every output file of ``build``.

    Raises :class:`EmitterError`, which names the emitter, when one fails or writes a file
    that another has written.
    """
    files: dict[str, bytes] = {}
    for emitter in emitters:
        try:
            made = emitter.emit(build)
        except Exception as failure:
            words = f"{type(failure).__name__}: {failure}"
            raise EmitterError(f"the emitter '{emitter.name}' failed: {words}") from failure
        taken = sorted(files.keys() & made.keys())
        if taken:
            raise EmitterError(f"the emitter '{emitter.name}' writes '{taken[0]}', which is taken")
        files.update(made)
    return dict(sorted(files.items()))
