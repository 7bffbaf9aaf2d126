"""What a whole sheet becomes when it is folded down, and where its grain then lies."""

from __future__ import annotations

from foredge.contract import Quantity, Sheet, given
from foredge_stages.text_block.terms import GEOMETRY, name

TIMES = ((1, "once"), (2, "twice"), (3, "three_times"))


def folded_down(sheet: Sheet) -> tuple[tuple[Quantity, ...], tuple[tuple[str, str], ...]]:
    """Leaf sizes of the sheet folded one, two and three times, and facts on the grain.

    Each fold halves the longer side, as printers fold; the last fold is the spine. The
    facts ``text_block.folded.twice.grain`` say ``along``, ``across`` or ``unknown``.
    """
    quantities: list[Quantity] = []
    facts: list[tuple[str, str]] = []
    sides = {"width": sheet.width, "height": sheet.height}
    for _, word in TIMES:
        longer, shorter = sorted(sides, key=lambda side: sides[side].value, reverse=True)
        half = sides[longer] / 2
        sides = {longer: half, shorter: sides[shorter]}
        grain = _grain(sheet, shorter)
        facts.append((name(f"folded.{word}.grain"), grain))
        for key, q in (("width", half), ("height", sides[shorter])):
            quantities.append(_named(word, key, q, grain, sheet))
    return tuple(quantities), tuple(facts)


def _grain(sheet: Sheet, spine: str) -> str:
    """Grain at the last fold, which runs along the side ``spine`` of the sheet."""
    if sheet.grain == "unknown":
        return "unknown"
    return "along" if sheet.grain == spine else "across"


def _named(word: str, key: str, q: Quantity, grain: str, sheet: Sheet) -> Quantity:
    times = word.replace("_", " ")
    return given(q, sheet.width, sheet.height).named(
        name(f"folded.{word}.{key}"),
        label=f"whole sheet folded {times}: leaf {key}",
        rule=f"each fold halves the longer side; grain {grain} the spine"
        if grain != "unknown"
        else "each fold halves the longer side; grain not known",
        source=GEOMETRY,
    )
