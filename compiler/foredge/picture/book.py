"""The picture of the finished book: its views on one sheet."""

from __future__ import annotations

from foredge.contract import Build, Drawing, Quantity, Raised
from foredge.display import show, show_size
from foredge.picture.face import Faces
from foredge.picture.frame import Frame, frame_of
from foredge.picture.inside import opened
from foredge.picture.sheet import TALLEST, Told, compose
from foredge.picture.views import View, cover, fore_edge, spine_view

_SEEN_MM = 0.045
"""On the sheet; what is less, no eye finds."""

_last: list[tuple[Build, tuple[Drawing, ...]]] = []


def book_picture(build: Build) -> tuple[Drawing, ...]:
    """One drawing, ``finished-book``; none where a stage did not get so far.

    Several emitters ask for the drawings of one build: the last picture is remembered.
    """
    if _last and _last[0][0] is build:
        return _last[0][1]
    frame = frame_of(build)
    made = () if frame is None else (_picture(build, frame),)
    _last[:] = [(build, made)]
    return made


def _picture(build: Build, frame: Frame) -> Drawing:
    faces = Faces(build, _SEEN_MM * frame.board_height / TALLEST)
    closed = [spine_view(faces, frame), cover(faces, frame, "front"), fore_edge(faces, frame)]
    if _behind(faces):
        closed.append(cover(faces, frame, "back"))
    width, height, items = compose(
        [_told(build, view) for view in closed], [_told(build, opened(faces, frame))]
    )
    return Drawing("finished-book", "The finished book", width, height, items, sizes=frame.sizes)


def _behind(faces: Faces) -> bool:
    """Whether there is something to see on the back."""
    looks = faces.build.whole.looks
    raised = any(isinstance(one, Raised) and one.on == "back" for one in looks)
    return raised or bool(faces.looks("back", "pattern") + faces.looks("back", "letters"))


def _told(build: Build, view: View) -> Told:
    """A view and the lines under it: what it is, and how large that is, a unit a line."""
    find = build.whole.quantity
    size: tuple[Quantity, ...]
    match view.title:
        case "Spine":
            what, size = "thick", (find("finishing.closed.thickness"),)
        case "Fore-edge":
            what, size = "block", (find("text_block.block.fore_edge"),)
        case "Cover opened":
            what, size = "leaf", _both(build, "text_block.block")
        case _:
            what, size = "", _both(build, "finishing.closed")
    systems = ("metric", "imperial") if build.book.display == "both" else (build.book.display,)
    lines = [_size(size, system) for system in systems]
    return Told(view, (view.title, f"{what} {lines[0]}".strip(), *lines[1:]))


def _both(build: Build, prefix: str) -> tuple[Quantity, ...]:
    return build.whole.quantity(f"{prefix}.width"), build.whole.quantity(f"{prefix}.height")


def _size(size: tuple[Quantity, ...], system: str) -> str:
    return show(size[0], system) if len(size) == 1 else show_size(size[0], size[1], system)
