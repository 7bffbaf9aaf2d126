"""What parts along a line of points have in common."""

from __future__ import annotations

import math
from collections.abc import Sequence

from foredge.contract import Problem, Quantity, ReliefJob, option_path, warning

SAME_MM = 1e-6


def repeated(
    job: ReliefJob, points: Sequence[tuple[Quantity, Quantity, Quantity]]
) -> tuple[Problem, ...]:
    """A warning for each point that is the same as the one before it."""
    values = [tuple(part.value for part in point) for point in points]
    return tuple(
        warning(
            option_path(job, "points", place),
            f"points {place} and {place + 1} are the same",
            "relief-point-twice",
            remedy="Leave one of them out, or correct it",
        )
        for place in range(1, len(values))
        if math.dist(values[place - 1], values[place]) < SAME_MM
    )
