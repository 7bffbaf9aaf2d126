"""The drawings of a build as SVG files."""

from __future__ import annotations

import re
from dataclasses import replace

from foredge.contract import Build, Drawing, Label
from foredge.drawing.svg import to_svg
from foredge.drawing.textbox import text_width
from foredge.emit.plan_drawings import all_drawings
from foredge.spec.words import listed

ROOM = 8.0
"""Added below a drawing for the line that says it is provisional, mm."""

_PLAIN = re.compile(r"[^a-z0-9.-]+")


class Drawings:
    """``drawings/*.svg``."""

    kind = "emitter"
    name = "drawings"
    title = "Drawings in SVG"

    def emit(self, build: Build) -> dict[str, bytes]:
        """Every drawing in real millimetres; ValueError when two have one name."""
        files: dict[str, bytes] = {}
        for drawing in all_drawings(build):
            path = f"drawings/{file_name(drawing)}.svg"
            if path in files:
                raise ValueError(f"two drawings are called '{drawing.name}'")
            files[path] = to_svg(marked(drawing))
        return files


def provisional(drawing: Drawing) -> str:
    """What a drawing says that rests on gates still to be measured; empty for the others."""
    gates = sorted({gate for size in drawing.sizes for gate in size.gates})
    if not gates:
        return ""
    # A picture that nobody cuts by need not warn of it.
    cut_by = drawing.true_scale or any(getattr(one, "role", "") == "cut" for one in drawing.items)
    return f"Provisional, rests on {listed(gates)}" + (": do not cut." if cut_by else ".")


def marked(drawing: Drawing) -> Drawing:
    """The drawing with a line under it where it rests on gates still to be measured."""
    words = provisional(drawing)
    if not words:
        return drawing
    size = min(3.5, 0.95 * drawing.width / text_width(words, 1.0))
    line = Label((drawing.width / 2, drawing.height + 4), words, size, anchor="middle")
    return replace(drawing, height=drawing.height + ROOM, items=(*drawing.items, line))


def file_name(drawing: Drawing) -> str:
    """The drawing's name, fit for a file on any system."""
    return _PLAIN.sub("-", drawing.name.lower()).strip("-.") or "drawing"
