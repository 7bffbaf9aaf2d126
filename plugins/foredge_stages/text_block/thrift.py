"""A leaf a little smaller that gives more folios from a sheet."""

from __future__ import annotations

from foredge.contract import Problem, faces, note
from foredge_stages.text_block.paper import Yield
from foredge_stages.text_block.sizes import FOLDS, Sizes
from foredge_stages.text_block.terms import SECTION

WORTH = 0.05
"""Beyond this share of the leaf it is another book, not a thriftier one (from memory)."""

LEAST_MM = 0.05
"""What is less cannot be told, nor cut."""


def smaller_leaf(layout: Yield, size: Sizes, folded: int) -> list[Problem]:
    """A note where one more column or row of folios would fit for a slightly smaller leaf."""
    place = layout.placement
    if faces(layout.sheet)[0].spoiled:
        return []
    columns, rows = place.columns.value, place.rows.value
    if columns < 1 or rows < 1:
        return []
    across, down, folios = FOLDS[folded]
    more = (
        ("narrower", size.fold_width.value, place.across.value / (columns + 1) / across,
         (columns + 1) * rows, "width"),
        ("lower", size.fold_height.value, place.down.value / (rows + 1) / down,
         columns * (rows + 1), "height"),
    )  # fmt: skip
    found = []
    for word, now, needed, pieces, side in more:
        less = now - needed
        # An old crease fixes the columns, so only rows can be won there.
        if place.crease is not None and side == "width":
            continue
        if LEAST_MM <= less <= WORTH * now:
            found.append(
                note(
                    (SECTION, "leaf", side),
                    f"a leaf {less:.1f} mm {word} would give {pieces * folios:g} folios from a "
                    f"sheet instead of {columns * rows * folios:g}",
                    "leaf-wastes-paper",
                    consequence="As it is, a broad strip of every sheet is left over",
                    remedy="Change the leaf, or keep the strip for end-papers, linings or pulp",
                    source="geometry",
                )
            )
    return found
