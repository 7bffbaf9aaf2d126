"""Super and lining as they lie on the spine, at true scale."""

from __future__ import annotations

from foredge.contract import (
    Drawing,
    GrainArrow,
    Item,
    Label,
    Line,
    Measured,
    Quantity,
    corners,
    show_length,
)
from foredge_stages.text_block.block import Block
from foredge_stages.text_block.linings import Linings

LEFT, TOP = 30.0, 22.0


def linings_template(block: Block, linings: Linings, display: str) -> tuple[Drawing, ...]:
    """The spine with its super and its lining, each centred on it; none where it has neither.

    They are drawn as trimmed: the blanks that are cut before are larger.
    """
    if not linings.pieces:
        return ()
    spine, height = block.spine.value, block.height.value
    flange = linings.flange.value if linings.super is not None else 8.0
    left, right = LEFT + flange, LEFT + flange + spine
    wide = spine + 2 * flange
    items: list[Item] = [
        *(Line(((x, TOP), (x, TOP + height)), "fold") for x in (left, right)),
        *(Line(((LEFT, y), (LEFT + wide, y)), "guide") for y in (TOP, TOP + height)),
        Label((LEFT + wide + 2, TOP + 1), "head of the block", 3.0),
        Label((LEFT + wide + 2, TOP + height + 1), "tail of the block", 3.0),
        Measured((left, TOP), (right, TOP), show_length(block.spine, display), 8),
    ]
    if linings.super is not None:
        items += _super(block, linings, display)
    if linings.lining is not None:
        short = linings.lining_short.value
        items.append(
            Line(corners(left, TOP + short, spine, height - 2 * short), "hidden", closed=True)
        )
    items += _words(linings, LEFT + wide + 2, TOP + height / 2 - 12, display)
    drawing = Drawing(
        "text-block-spine-linings",
        "Super and lining on the spine" if linings.super is not None else "Lining on the spine",
        LEFT + wide + 62,
        TOP + height + 22,
        tuple(items),
        true_scale=True,
        sizes=(block.spine, block.height),
    )
    return (drawing,)


def _super(block: Block, linings: Linings, display: str) -> list[Item]:
    short, flange = linings.super_short.value, linings.flange.value
    wide, high = block.spine.value + 2 * flange, block.height.value - 2 * short
    top, foot = TOP + short, TOP + short + high
    height = block.height - 2 * linings.super_short
    flange_told = show_length(linings.flange, display)
    return [
        Line(corners(LEFT, top, wide, high), "cut", closed=True),
        Measured((LEFT, foot), (LEFT + flange, foot), flange_told, -short - 8),
        Measured((LEFT, foot), (LEFT, top), show_length(height, display), 8),
        GrainArrow((LEFT + flange / 2, TOP + block.height.value / 2), min(30.0, high / 2), 90.0),
    ]


def _words(linings: Linings, x: float, y: float, display: str) -> list[Item]:
    lines = []
    if linings.super is not None:
        lines += ["full line: super,", *_short(linings.super_short, display)]
    if linings.lining is not None:
        lines += ["broken line: lining,", *_short(linings.lining_short, display)]
    return [Label((x, y + 5 * place), words, 3.0) for place, words in enumerate(lines)]


def _short(short: Quantity, display: str) -> tuple[str, str]:
    return "short at each end", f"by {show_length(short, display)}"
