"""Gate G1, and the operation that cuts the boards once G1 and G2 are measured."""

from __future__ import annotations

from foredge.contract import (
    BoardsResult,
    Book,
    CoverResult,
    Gate,
    Operation,
    Piece,
    Reading,
    StageResult,
    Text,
    number,
    say,
)
from foredge_stages.case.frame import Frame

CUT = "case.cut-boards"
LAY = "case.lay-joint"


def gate_one(book: Book, frame: Frame, boards: BoardsResult, cover: CoverResult) -> StageResult:
    """Gate G1 and laying its cloth together to be measured."""
    operation = Operation(
        LAY,
        "Lay the joint's cloth together",
        (
            say("Cut a scrap of the covering as it will be used, with its backing if it has one."),
            say("Lay a scrap of the inner spine strip on it."),
            say("Squeeze the pile hard between two scraps of board for a moment."),
        ),
        book.practice("hand-measure"),
        after=(boards.ready, *cover.prepared),
        tools=("caliper",),
    )
    gate = Gate(
        "G1",
        "Board and cloth",
        LAY,
        (
            Reading("board", "board thickness", frame.board),
            Reading("joint_cloth", "cloth in the joint", frame.joint_cloth),
        ),
        (
            say("Measure the board in the middle of each edge and take the mean."),
            say("Measure the pile of cloth in three places, squeezed only lightly; take the mean."),
        ),
    )
    return StageResult(operations=(operation,), gates=(gate,))


def cut_boards(book: Book, frame: Frame, boards: BoardsResult, block_ready: str) -> StageResult:
    """Boards, spine piece and spacers at their final size."""
    spacers = _spacers(frame)
    spine = ("case.spine",) if frame.spine.has_piece else ()
    cuts = number(8 + 2 * len(spacers) + 2 * len(spine))
    operation = Operation(
        CUT,
        "Cut the boards",
        _steps(frame, spacers),
        book.practice("hand-set-up") + cuts * book.practice("hand-cut-board"),
        after=(LAY, *((block_ready,) if block_ready else ())),
        stops_for=("G1", "G2"),
        cautions=("blade", "hand-strain"),
        pieces=("case.board", *spine, *(piece.name for piece in spacers)),
        tools=("knife", "steel rule", "square", "cutting mat", "sanding block"),
        splits=True,
    )
    return StageResult(pieces=spacers, operations=(operation,), facts=(("case.boards_cut", CUT),))


def _spacers(frame: Frame) -> tuple[Piece, ...]:
    """The strip that sets the boards apart, and two that set the spine piece in the middle."""
    between = Piece(
        "case.spacer",
        "Spacer strip, board to board",
        number(1),
        frame.distance,
        frame.height,
        "any",
        material="any stiff card",
        kinds=("board",),
    )
    if not frame.spine.has_piece:
        return (between,)
    joint = Piece(
        "case.joint_spacer",
        "Spacer strip for the joint",
        number(2),
        frame.joint,
        frame.height,
        "any",
        material="any stiff card",
        kinds=("board",),
    )
    return between, joint


def _steps(frame: Frame, spacers: tuple[Piece, ...]) -> tuple[Text, ...]:
    squares = frame.squares
    steps = [
        say("Square one corner of each board first; measure from that corner only."),
        say(
            "Cut two boards {width} by {height}, the grain along the spine.",
            width=frame.width,
            height=frame.height,
        ),
        say("Mark head, spine edge and inside of each board; ease the edges with the block."),
    ]
    if frame.spine.has_piece:
        steps.append(
            say(
                "Cut the spine piece {width} by {height}, the grain along it.",
                width=frame.spine.width,
                height=frame.height,
            )
        )
    steps.append(say("Cut a spacer strip {width} wide of any stiff card.", width=frame.distance))
    if len(spacers) > 1:
        steps.append(say("Cut two joint strips {width} wide of the same card.", width=frame.joint))
    steps += [
        say(
            "Offer the boards up to the block dry: {head} over at the head, {tail} at the tail, "
            "{fore} at the fore-edge.",
            head=squares.head,
            tail=squares.tail,
            fore=squares.fore_edge,
        ),
        say(
            "Hold each board {setback} back from the spine of the block.",
            setback=frame.joint - frame.dip,
        ),
    ]
    return tuple(steps)
