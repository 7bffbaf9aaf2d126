"""Every drawing of a build: the finished book, those of its stages, those of its plan."""

from __future__ import annotations

from foredge.contract import Build, Drawing
from foredge.emit.cutting_drawings import cut_drawings
from foredge.emit.timeline import timeline_drawings
from foredge.picture.book import book_picture


def all_drawings(build: Build) -> tuple[Drawing, ...]:
    """The finished book, the drawings of the stages in their order, the cutting plans, the
    timeline."""
    return (
        *book_picture(build),
        *build.whole.drawings,
        *cut_drawings(build),
        *timeline_drawings(build),
    )
