"""The drawings of a build as SVG files."""

from __future__ import annotations

import re

from foredge.contract import Build, Drawing
from foredge.drawing.svg import to_svg

_PLAIN = re.compile(r"[^a-z0-9.-]+")


class Drawings:
    """``drawings/*.svg``."""

    kind = "emitter"
    name = "drawings"
    title = "Drawings in SVG"

    def emit(self, build: Build) -> dict[str, bytes]:
        """Every drawing in real millimetres; ValueError when two have one name."""
        files: dict[str, bytes] = {}
        for drawing in build.whole.drawings:
            path = f"drawings/{file_name(drawing)}.svg"
            if path in files:
                raise ValueError(f"two drawings are called '{drawing.name}'")
            files[path] = to_svg(drawing)
        return files


def file_name(drawing: Drawing) -> str:
    """The drawing's name, fit for a file on any system."""
    return _PLAIN.sub("-", drawing.name.lower()).strip("-.") or "drawing"
