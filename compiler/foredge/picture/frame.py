"""The sizes of the finished book that its picture is composed from, as plain millimetres."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, Quantity

_NAMES = {
    "board_width": "case.board.width",
    "board_height": "case.board.height",
    "board": "case.board.thickness",
    "spine": "case.spine.width",
    "joint": "case.joint",
    "case_width": "case.closed.width",
    "case_height": "case.closed.height",
    "thick": "case.closed.thickness",
    "head": "case.square.head",
    "tail": "case.square.tail",
    "paste_width": "case.paste_down.width",
    "paste_height": "case.paste_down.height",
    "block_width": "text_block.block.width",
    "block_height": "text_block.block.height",
    "block_edge": "text_block.block.fore_edge",
}
CLOSED = ("finishing.closed.width", "finishing.closed.height", "finishing.closed.thickness")


@dataclass(frozen=True, slots=True)
class Frame:
    """All in mm; ``sizes`` are the quantities they come from."""

    board_width: float
    board_height: float
    board: float
    spine: float
    joint: float
    case_width: float
    case_height: float
    thick: float
    head: float
    tail: float
    paste_width: float
    paste_height: float
    block_width: float
    block_height: float
    block_edge: float
    sizes: tuple[Quantity, ...]

    @property
    def before_board(self) -> float:
        """From the outside of the spine to the board's edge, closed."""
        return max(2.0, self.case_width - self.board_width)

    @property
    def covered(self) -> float:
        """A board with its covering on both sides, seen from its edge."""
        return self.board + self.case_height - self.board_height


def frame_of(build: Build) -> Frame | None:
    """The sizes of ``build``; None where a stage did not make one of them."""
    known = {quantity.name: quantity for quantity in build.whole.quantities}
    if any(name not in known for name in (*_NAMES.values(), *CLOSED)):
        return None
    values = {key: known[name].value for key, name in _NAMES.items()}
    sizes = tuple(known[name] for name in (*_NAMES.values(), *CLOSED))
    return Frame(**values, sizes=sizes)
