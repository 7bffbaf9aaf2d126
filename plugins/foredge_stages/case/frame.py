"""The case before it is covered: thicknesses, squares, joint, spine, boards."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Book,
    Part,
    Quantity,
    SpineJob,
    SpineResult,
    Upstream,
    cited,
    maximum,
)
from foredge_stages.case.geometry import (
    board_distance_of,
    board_height_of,
    board_width_of,
    dip_of,
    flat_width_of,
    joint_by_rule,
)
from foredge_stages.case.inner_strip import strip_thickness
from foredge_stages.case.options import CaseOptions

GEOMETRY = "common practice"
CHOICE = "the maker's choice"
SUM = "geometry"


@dataclass(frozen=True, slots=True)
class Block:
    """The finished block, as text-block hands it over (gate G2)."""

    height: Quantity
    width: Quantity
    spine: Quantity
    fore_edge: Quantity


@dataclass(frozen=True, slots=True)
class Chosen:
    """The parts of this case."""

    boards: Part[Any]
    spine: Part[Any]
    covering: Part[Any]
    casing_in: Part[Any]


@dataclass(frozen=True, slots=True)
class Squares:
    """Board beyond the block."""

    head: Quantity
    tail: Quantity
    fore_edge: Quantity


@dataclass(frozen=True, slots=True)
class Frame:
    """Everything that follows from block, board and cloth.

    ``joint_rule`` is the joint that board, cloth and spine ask for, ``joint`` the one used.
    ``covering`` is the thickness of the covering alone.
    """

    block: Block
    board: Quantity
    covering: Quantity
    joint_cloth: Quantity
    stack: Quantity
    squares: Squares
    spine: SpineResult
    joint_rule: Quantity
    joint: Quantity
    dip: Quantity
    width: Quantity
    height: Quantity
    distance: Quantity

    def quantities(self) -> tuple[Quantity, ...]:
        """Its named quantities, and the closed book's sizes."""
        flat = flat_width_of(self.width, self.distance).named(
            "case.flat.width",
            label="case laid open, without turn-ins",
            rule="the sum of its parts",
            source=SUM,
        )
        spacer = self.distance.named("case.spacer", label="width of the spacer strip")
        return (
            self.board,
            self.joint_cloth,
            self.stack,
            self.squares.head,
            self.squares.tail,
            self.squares.fore_edge,
            self.spine.width,
            self.joint,
            self.dip,
            self.height,
            self.width,
            self.distance,
            spacer,
            flat,
            *closed(self),
        )


def closed(frame: Frame) -> tuple[Quantity, Quantity, Quantity]:
    """Height, width and thickness of the closed book, before any relief."""
    height = (frame.height + 2 * frame.covering).named(
        "case.closed.height", label="height of the closed book", rule="board and cloth", source=SUM
    )
    back = frame.spine.thickness + frame.covering
    width = (frame.width + frame.joint - frame.dip + back).named(
        "case.closed.width",
        label="width of the closed book",
        rule="board, closed joint, and the spine behind it",
        source=SUM,
    )
    thick = maximum(frame.block.spine, frame.block.fore_edge)
    thickness = (thick + 2 * (frame.board + frame.covering)).named(
        "case.closed.thickness",
        label="thickness of the closed book",
        rule="the block where it is thickest between two covered boards",
        source=SUM,
    )
    return height, width, thickness


def build_frame(book: Book, options: CaseOptions, chosen: Chosen, upstream: Upstream) -> Frame:
    """Measure by measure: board, cloth, squares, spine, joint, board sizes."""
    block = Block(
        *(upstream.quantity(f"text_block.block.{side}") for side in _SIDES),
    )
    board = _board(book, chosen)
    covering = chosen.covering.plugin.in_joint(book, chosen.covering)
    joint_cloth = _joint_cloth(book, covering, options)
    stack = _stack(upstream, joint_cloth)
    squares = _squares(book, options, board, upstream)
    height = _height(book, block, squares)
    rule = joint_by_rule(book, board, stack)
    spine = chosen.spine.plugin.plan(
        SpineJob(book, chosen.spine, block.spine, board, height, stack, rule)
    )
    joint = _joint(book, options, spine.joint)
    dip = _dip(board, spine.width, block.spine)
    return Frame(
        block=block,
        board=board,
        covering=covering,
        joint_cloth=joint_cloth,
        stack=stack,
        squares=squares,
        spine=spine,
        joint_rule=spine.joint,
        joint=joint,
        dip=dip,
        width=_width(book, block, squares, joint, dip),
        height=height,
        distance=_distance(spine.width, joint),
    )


_SIDES = ("height", "width", "spine", "fore_edge")


def _board(book: Book, chosen: Chosen) -> Quantity:
    estimate = chosen.boards.plugin.thickness(book, chosen.boards)
    return book.measured(estimate, "G1", "board", "board thickness").named(
        "case.board.thickness",
        label="board thickness",
        rule="the finished board, measured cured",
        source=GEOMETRY,
    )


def _joint_cloth(book: Book, covering: Quantity, options: CaseOptions) -> Quantity:
    estimate = covering + strip_thickness(book, options.inner_strip)
    return book.measured(estimate, "G1", "joint_cloth", "cloth in the joint").named(
        "case.joint_cloth",
        label="cloth in the joint",
        rule="the covering with its backing, and the inner spine strip",
        source=GEOMETRY,
    )


def _stack(upstream: Upstream, joint_cloth: Quantity) -> Quantity:
    stack = (
        joint_cloth
        + upstream.quantity("text_block.joint.end_paper_cloth")
        + upstream.quantity("text_block.joint.tapes")
    )
    return stack.named(
        "case.joint.cloth",
        label="all cloth in one joint",
        rule="what case, end-papers and tapes bring; an ordinary super is in the 6 mm",
        source=GEOMETRY,
    )


def _squares(book: Book, options: CaseOptions, board: Quantity, upstream: Upstream) -> Squares:
    usual, source = options.square, CHOICE
    if usual is None:
        usual = maximum(book.default("square"), board)
        source = cited(book.practice("square"))
    tail = options.squares.tail
    if tail is None and options.square is None and hangs(upstream):
        tail = book.default("square-tail-link")
    pick = options.squares
    return Squares(
        _square(book, "head", pick.head, usual, source),
        _square(book, "tail", tail, usual, source),
        _square(book, "fore_edge", pick.fore_edge, usual, source),
    )


def hangs(upstream: Upstream) -> bool:
    """Whether the sewing leaves the block's weight hanging between the boards."""
    return upstream.fact("text_block.supported") == "no"


def _square(book: Book, edge: str, own: Quantity | None, usual: Quantity, source: str) -> Quantity:
    if own is not None:
        source = cited(own) or CHOICE
    decided = own is not None or source == CHOICE
    rule = "as decided" if decided else "a board's thickness or more"
    return book.size(usual if own is None else own).named(
        f"case.square.{edge}",
        label=f"square at the {edge.replace('_', '-')}",
        rule=rule,
        source=source,
    )


def _height(book: Book, block: Block, squares: Squares) -> Quantity:
    return book.size(board_height_of(block.height, squares.head, squares.tail)).named(
        "case.board.height",
        label="board height",
        rule="the block and a square at head and at tail",
        source="Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, p. 117",
    )


def _width(book: Book, block: Block, squares: Squares, joint: Quantity, dip: Quantity) -> Quantity:
    return book.size(board_width_of(block.width, squares.fore_edge, joint, dip)).named(
        "case.board.width",
        label="board width",
        rule="the block and the square at the fore-edge, less the joint that stays open beside "
        "the block when the book is closed",
        source=GEOMETRY,
    )


def _joint(book: Book, options: CaseOptions, rule: Quantity) -> Quantity:
    if options.joint is not None:
        return book.size(options.joint).named(
            "case.joint", label="joint", rule="as the spec says", source=CHOICE
        )
    return book.size(rule).named(
        "case.joint",
        label="joint",
        rule="6 mm, the board, and twice the cloth beyond what the 6 mm covers",
        source=cited(book.practice("joint-base")),
    )


def _dip(board: Quantity, spine: Quantity, block_spine: Quantity) -> Quantity:
    return dip_of(board, spine, block_spine).named(
        "case.joint.dip",
        label="dip of the cloth",
        rule="the closed joint takes back half a board, and half of what the spine piece is "
        "wider than the block",
        source=GEOMETRY,
    )


def _distance(spine: Quantity, joint: Quantity) -> Quantity:
    return board_distance_of(spine, joint).named(
        "case.board_distance",
        label="distance from board to board",
        rule="the spine and a joint on each side, flat on the bench",
        source=GEOMETRY,
    )
