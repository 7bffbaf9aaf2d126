"""What is masked for each coat, so that tape is put on once and pulled off once."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any

from foredge.contract import Coat, Part


@dataclass(frozen=True, slots=True)
class Mask:
    """``put``: masked now. ``off``: the tape comes off at the end of this coat."""

    put: tuple[str, ...]
    off: bool


def masks(coats: Sequence[Coat], parts: Sequence[Part[Any]]) -> tuple[Mask, ...]:
    """One for each coat; coats with the same mask keep it on."""
    wanted = [_wanted(coat, part) for coat, part in zip(coats, parts, strict=True)]
    found = []
    for place, mask in enumerate(wanted):
        before = wanted[place - 1] if place else ()
        after = wanted[place + 1] if place + 1 < len(wanted) else ()
        found.append(Mask(mask if mask != before else (), bool(mask) and mask != after))
    return tuple(found)


def _wanted(coat: Coat, part: Part[Any]) -> tuple[str, ...]:
    left = tuple(getattr(part.options, "leave", ()))
    on_cloth = any(one.kind == "plain" and one.face != "edges" for one in coat.regions)
    beside_cloth = not on_cloth and any(one.kind == "relief" for one in coat.regions)
    return tuple(dict.fromkeys((*(("cloth",) if beside_cloth else ()), *left)))
