"""What every core hands on, whatever it is made of; and bringing its outline onto the ground."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import MASS, Origin, Quantity, StageResult, Text, leaf, say
from foredge_stages.sculpt.reading import Relief

NO_MASS = leaf(0.0, MASS, "no core", Origin("constant"))


@dataclass(frozen=True, slots=True)
class Armature:
    """``masses`` of foil, tape and glue; ``last`` is the operation after which the clay may
    begin: those of the ground where there is no core at all."""

    work: StageResult
    masses: tuple[Quantity, ...]
    last: tuple[str, ...]


def mark_steps(relief: Relief) -> tuple[Text, ...]:
    """Bringing the outline onto the ground."""
    corner = "from its left edge" if relief.on == "spine" else "from the spine edge"
    return (
        say(f"Lay the plan of this sheet on the {relief.where}, head to head, and prick through."),
        say(f"Every place is measured {corner} and from the head."),
    )
