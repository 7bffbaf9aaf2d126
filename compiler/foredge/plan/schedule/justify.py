"""Forward-backward improvement: push a schedule right, then left again.

Source: Valls, V., Ballestín, F., Quintanilla, S. (2005), "Justification and RCPSP: a technique
that pays", European Journal of Operational Research 165, pp. 375-386.
"""

from __future__ import annotations

from .instance import Instance, Start
from .schemes import order_by_start, serial


def justified(instance: Instance, start: Start) -> Start | None:
    """The schedule after one pass backwards from its finish and one pass forwards.

    None when the windows leave no room for one of the passes.
    """
    late = pushed_right(instance, start)
    if late is None:
        return None
    return serial(instance, order_by_start(instance, late))


def pushed_right(instance: Instance, start: Start) -> Start | None:
    """The tasks as late as they go before the finish of this schedule, last ones first."""
    mirror, axis = instance.mirror, instance.axis
    finish = instance.finishes(start)
    mirrored = [axis - moment for moment in finish]
    backward = serial(mirror, order_by_start(mirror, mirrored), axis - max(finish, default=0))
    if backward is None:
        return None
    return [axis - moment for moment in mirror.finishes(backward)]
