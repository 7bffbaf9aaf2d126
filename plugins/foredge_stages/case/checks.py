"""What can be wrong with a case: geometry first (errors), then habits of the trade."""

from __future__ import annotations

from collections.abc import Iterator

from foredge.contract import Book, Path, Problem, Quantity, cited, error, note, warning
from foredge_stages.case.frame import Frame
from foredge_stages.case.options import CaseOptions

SECTION = "case"


def errors(options: CaseOptions, frame: Frame) -> list[Problem]:
    """Sizes that no case can have."""
    found = [*_square_errors(options, frame)]
    if frame.width.value <= 0 or frame.height.value <= 0:
        found.append(
            error(
                (SECTION, "joint") if options.joint is not None else (SECTION,),
                f"the boards would be {_mm(frame.width)} by {_mm(frame.height)}",
                "board-impossible",
                consequence=f"A joint of {_mm(frame.joint)} leaves nothing of a block "
                f"{_mm(frame.block.width)} wide",
                remedy="Make the leaf larger, or the joint smaller",
            )
        )
    return found


def _square_errors(options: CaseOptions, frame: Frame) -> Iterator[Problem]:
    block, squares = frame.block, frame.squares
    told: set[Path] = set()
    for edge, square, side, what in (
        ("head", squares.head, block.height, "high"),
        ("tail", squares.tail, block.height, "high"),
        ("fore_edge", squares.fore_edge, block.width, "wide"),
    ):
        path = _square_path(options, edge)
        if square.value >= side.value and path not in told:
            told.add(path)
            yield error(
                path,
                f"the square at the {edge.replace('_', '-')} is {_mm(square)}, and the leaf "
                f"is only {_mm(side)} {what}",
                "square-too-large",
                remedy="Squares are usually 3 to 5 mm; look at the unit",
            )


def _square_path(options: CaseOptions, edge: str) -> Path:
    if getattr(options.squares, edge) is not None:
        return (SECTION, "squares", edge)
    return (SECTION, "square") if options.square is not None else (SECTION,)


def advice(book: Book, options: CaseOptions, frame: Frame, hanging: bool) -> list[Problem]:
    """What goes wrong at the bench or later; every one rests on practice, so none is an error."""
    return [
        *_joint_advice(book, options, frame),
        *_spine_advice(frame),
        *_cloth_advice(book, frame),
        *_board_advice(book, frame),
        *_tail_advice(book, options, frame, hanging),
    ]


def _joint_advice(book: Book, options: CaseOptions, frame: Frame) -> Iterator[Problem]:
    path = (SECTION, "joint") if options.joint is not None else (SECTION,)
    joint, least = frame.joint, book.practice("joint-least")
    boards = frame.board.value * book.practice("joint-least-boards").value
    floor = max(least.value, boards)
    if joint.value < floor:
        yield warning(
            path,
            f"the joint is {_mm(joint)}; a board of {_mm(frame.board)} asks for {floor:.3g} mm "
            "at the least",
            "joint-narrow",
            consequence="The board binds when it opens, and the end-paper tears",
            remedy=f"Leave joint out ({_mm(frame.joint_rule)} by the rule), or make it wider",
            source=cited(least),
        )
    elif joint.value < frame.joint_rule.value - 1:
        yield warning(
            path,
            f"the joint is {_mm(joint)}; this board and {_mm(frame.stack)} of cloth in the joint "
            f"ask for {_mm(frame.joint_rule)}",
            "joint-narrow",
            consequence="The board will not open flat",
            remedy="Leave joint out, or make it wider",
            source="common practice",
        )
    elif joint.value > frame.joint_rule.value + 3:
        yield note(
            path,
            f"the joint is {_mm(joint)}, {joint.value - frame.joint_rule.value:.1f} mm more than "
            "board and cloth ask for",
            "joint-wide",
            consequence="The boards hang loose and sag",
            remedy=f"Leave joint out ({_mm(frame.joint_rule)} by the rule), or make it narrower",
            source=cited(least),
        )


def _spine_advice(frame: Frame) -> Iterator[Problem]:
    low = frame.block.spine.value
    high = low + 2 * frame.board.value
    width = frame.spine.width
    if not low - 0.5 <= width.value <= high + 0.5:
        narrow = width.value < low
        yield warning(
            (SECTION, "spine", "width"),
            f"the spine is {_mm(width)} wide; the block is {low:.1f} mm thick, so {low:.1f} to "
            f"{high:.1f} mm would fit",
            "spine-width",
            consequence="The book cannot close" if narrow else "The hinges are loose",
            remedy="Leave the width out, and it follows block and board",
            source="A. W. Johnson, on joints, Skin Deep vol. 15 (J. Hewit & Sons)",
        )


def _cloth_advice(book: Book, frame: Frame) -> Iterator[Problem]:
    thick = book.practice("covering-thick")
    if frame.covering.value > thick.value:
        yield note(
            (SECTION, "covering"),
            f"the covering is {_mm(frame.covering)} thick, and asks for a joint of "
            f"{_mm(frame.joint_rule)}",
            "covering-thick",
            consequence="Corners and head caps are bulky",
            remedy="Thin the corners; a thinner cloth over the spine opens more easily",
            source=cited(thick),
        )


def _board_advice(book: Book, frame: Frame) -> Iterator[Problem]:
    relief = any(_is_relief(part.options) for part in book.embellishment)
    least = book.practice("board-thickness-relief" if relief else "board-thickness")
    floor = least.value - 0.25 if relief else least.low
    if frame.board.value < floor:
        yield note(
            (SECTION, "boards"),
            f"the board is {_mm(frame.board)} thick; "
            f"{'under a relief' if relief else 'for a cased book'} {floor:.3g} mm or more is usual",
            "board-thin",
            consequence="It bends, and its corners crush",
            source=cited(least),
        )


def _is_relief(options: object) -> bool:
    return getattr(options, "made_on", None) is not None


def _tail_advice(
    book: Book, options: CaseOptions, frame: Frame, hanging: bool
) -> Iterator[Problem]:
    advised = book.practice("square-tail-link")
    tail = frame.squares.tail
    if hanging and tail.value > 2 * advised.value - 1:
        yield note(
            _square_path(options, "tail"),
            f"the sewing has no tapes to hold the block up, and the tail square is {_mm(tail)}",
            "tail-square-unsupported",
            consequence="Standing on a shelf the block sags down and pulls at its thread",
            remedy=f"Set squares.tail to {_mm(advised)}, or keep the book lying flat",
            source=cited(advised),
        )


def _mm(q: Quantity) -> str:
    return f"{round(q.value, 2):g} mm"
