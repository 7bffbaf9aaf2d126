"""Emitters read a Build and return files. They compute nothing about the book.

One emitter a file; each has ``kind``, ``name``, ``title`` and ``emit(build)`` -> relative path
-> bytes. Same build, same bytes.
"""

from __future__ import annotations

from collections.abc import Sequence

from foredge.contract import Build, Emitter
from foredge.emit.cut_list_csv import CutList
from foredge.emit.markdown import BuildSheet
from foredge.emit.quantities_json import Quantities
from foredge.emit.stage_sheets import StageSheets
from foredge.emit.svg import Drawings

EMITTERS: tuple[Emitter, ...] = (BuildSheet(), StageSheets(), Quantities(), CutList(), Drawings())
"""The emitters of every build, in the order they run."""


def emit(build: Build, emitters: Sequence[Emitter] = EMITTERS) -> dict[str, bytes]:
    """Every output file of ``build``; ValueError when two emitters write the same one."""
    files: dict[str, bytes] = {}
    for emitter in emitters:
        for path, content in emitter.emit(build).items():
            if path in files:
                raise ValueError(f"the emitter '{emitter.name}' writes '{path}', which is taken")
            files[path] = content
    return dict(sorted(files.items()))
