"""A relief with what is worked out of it before its clay: ground, armature, masses."""

from __future__ import annotations

from dataclasses import dataclass

from foredge_stages.sculpt.armature import Armature
from foredge_stages.sculpt.core import build_armature
from foredge_stages.sculpt.ground import Ground, prepare
from foredge_stages.sculpt.reading import Relief
from foredge_stages.sculpt.weights import Weights, weigh


@dataclass(frozen=True, slots=True)
class Begun:
    """One relief; its clay is still to be mixed."""

    relief: Relief
    ground: Ground
    armature: Armature
    weights: Weights


def begin(relief: Relief) -> Begun:
    """Ground and armature of ``relief``, and what it will weigh."""
    ground = prepare(relief)
    armature = build_armature(relief, ground.after, ground.marked)
    return Begun(relief, ground, armature, weigh(relief, armature))
