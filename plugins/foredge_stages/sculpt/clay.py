"""Clay for all reliefs: those of one skin share one batch."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Part,
    Quantity,
    SkinJob,
    SkinResult,
    StageResult,
    skin_of,
    total,
)
from foredge_stages.sculpt.begun import Begun

_OF_THE_LAYER = ("thickness", "layer", "layers", "note")
"""Options of a skin that say how it is laid on, not what it is mixed of."""


@dataclass(frozen=True, slots=True)
class Clay:
    """``ready`` and ``lay`` of each relief, by its panel."""

    work: StageResult
    of: Mapping[str, SkinResult]


def mix_clay(begun: Sequence[Begun]) -> Clay:
    """One batch for each skin that is wanted at one time of the work."""
    groups: dict[tuple[Any, ...], list[Begun]] = {}
    for one in begun:
        relief = one.relief
        key = (relief.made_on, *_stuff(skin_of(relief.book, relief.part)))
        groups.setdefault(key, []).append(one)
    work = StageResult()
    of: dict[str, SkinResult] = {}
    for place, group in enumerate(groups.values(), start=1):
        mixed = _mix(group, place)
        work += mixed.work
        of |= {one.relief.on: mixed for one in group}
    return Clay(work, of)


def _stuff(skin: Part[Any]) -> tuple[Any, ...]:
    """What tells two skins apart."""
    said = skin.options
    values = (getattr(said, name) for name in said.__struct_fields__ if name not in _OF_THE_LAYER)
    return (skin.plugin.name, *(v.value if isinstance(v, Quantity) else v for v in values))


def _mix(group: Sequence[Begun], place: int) -> SkinResult:
    first = group[0].relief
    skin = skin_of(first.book, first.part)
    find = first.upstream.quantity
    suffix = "" if place == 1 else f"-{place}"
    result: SkinResult = skin.plugin.mix(
        SkinJob(
            first.book,
            skin,
            first.figures,
            wet=total([one.weights.put_on for one in group]),
            area=total([one.relief.report.surface for one in group]),
            offcuts=find("text_block.offcuts.mass"),
            prefix=f"sculpt.clay{'' if place == 1 else place}",
            suffix=suffix,
            begin=tuple(dict.fromkeys(op for one in group for op in one.ground.begin)),
            due=group[0].armature.last,
        )
    )
    return result
