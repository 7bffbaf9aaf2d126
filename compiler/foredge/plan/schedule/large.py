"""Problems too large to be searched: every task is placed once."""

from __future__ import annotations

from .blocks import OnePass
from .instance import Instance, Start

LARGE = 250
"""From more tasks on, windows or maximum lags leave no time for a search."""


def too_large(instance: Instance) -> bool:
    """Whether a search would take many seconds."""
    return instance.size > LARGE and (any(instance.openings) or instance.order is None)


def placed_once(instance: Instance) -> Start | None:
    """The better of two schedules: the tasks in the order in which they are given as far as
    lags allow, and first what can start soonest. None when neither fits into the windows."""
    one, order = OnePass(instance), range(instance.size)
    found = [one.run(order, soonest) for soonest in (False, True)]
    ends = [(max(instance.finishes(start)), start) for start in found if start is not None]
    return min(ends, key=lambda end: end[0])[1] if ends else None
