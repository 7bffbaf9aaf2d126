"""The page for the bench: one file that works from disk, without a network.

Everything is in it: the steps with boxes to tick, the numbers with their derivations, the
drawings, the boxes for the readings. Its parts are in :mod:`foredge.emit.html`.
"""

from __future__ import annotations

from typing import Any

from foredge.contract import Build
from foredge.emit.cautions import digest
from foredge.emit.html.derivations import derivations
from foredge.emit.html.lists import cut_groups, glance_lines, stage_tables
from foredge.emit.html.money import money_section
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.page import render_page
from foredge.emit.html.pictures import pictures
from foredge.emit.html.plan import after_work, before_work
from foredge.emit.html.readings import page_gates
from foredge.emit.html.told import harmless, told
from foredge.emit.html.work import anchor, page_parts
from foredge.emit.materials import tools
from foredge.emit.overview import consents, remarks, troubles
from foredge.emit.work import step_numbers

COVER = "finished-book.svg"
"""The drawing that stands at the head of the page."""


class BenchPage:
    """``build-sheet.html``."""

    kind = "emitter"
    name = "bench-page"
    title = "Build sheet for the bench in HTML"

    def emit(self, build: Build) -> dict[str, bytes]:
        """The whole book on one page."""
        numbers = Numbers(build)
        content = _content(build, numbers)
        page = render_page(**content, derivations=derivations(build, numbers))
        return {"build-sheet.html": page}


def _content(build: Build, numbers: Numbers) -> dict[str, Any]:
    gates = page_gates(build, numbers)
    drawn = {picture.name: picture for picture in pictures(build)}
    planned = tuple(before_work(build, numbers, drawn))
    placed = {
        COVER,
        *(one.name for part in planned for block in part.blocks for one in block.pictures),
    }
    return {
        "title": harmless(build.book.title).strip(),
        "name": build.name,
        "file": harmless(build.shown(build.file)),
        "shown": build.book.display,
        "glance": glance_lines(build, numbers),
        "remarks": told(build, remarks),
        "gates": gates,
        "gate_at": {gate.step_anchor: gate for gate in gates},
        "troubles": told(build, troubles),
        "consents": told(build, consents),
        "cut_from": cut_groups(build, numbers),
        "tools": told(build, tools),
        "parts": page_parts(build, numbers),
        "numbers": stage_tables(build, numbers),
        "digest": told(build, _digest),
        "planned": planned,
        "afterwards": (*after_work(build, numbers), *money_section(build, numbers)),
        "pictures": [one for name, one in drawn.items() if name not in placed],
        "cover": drawn.get(COVER),
        "anchor": anchor,
    }


def _digest(build: Build) -> Any:
    steps = step_numbers(build)
    return digest(build, [(steps[one.id], one.cautions) for one in build.order])
