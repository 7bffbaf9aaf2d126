"""Priority rules: which task goes first. Smaller values go first.

Source: Kolisch, R., Hartmann, S. (1999), "Heuristic algorithms for the resource-constrained
project scheduling problem: classification and computational analysis", in Weglarz (ed.),
Project Scheduling, Kluwer, pp. 147-178.
"""

from __future__ import annotations

from .instance import Instance
from .propagate import Domain


def priorities(instance: Instance, domain: Domain) -> dict[str, list[int]]:
    """The priority of each task under each rule.

    ``domain`` holds the earliest and latest starts against the critical path's finish.
    """
    size = instance.size
    latest_finish = [instance.end(i, domain.late[i]) for i in range(size)]
    followers = all_followers(instance)
    return {
        "latest finish": latest_finish,
        "latest start": domain.late[:],
        "most followers": [-f.bit_count() for f in followers],
        "least slack": [domain.late[i] - domain.early[i] for i in range(size)],
        "most work behind": [-w for w in _work_behind(instance, followers)],
        "largest share of resources": [-w for w in _load(instance)],
        "shortest": instance.duration[:],
    }


def all_followers(instance: Instance) -> list[int]:
    """For each task the set, as bits, of tasks that some chain of forward lags puts after it."""
    result = [0] * instance.size
    for i in reversed(forward_order(instance)):
        for j, weight in instance.out[i]:
            if weight > 0 or (weight == 0 and instance.order is not None):
                result[i] |= result[j] | 1 << j
    return result


def forward_order(instance: Instance) -> list[int]:
    """The tasks so that each lag of more than zero minutes runs forwards."""
    if instance.order is not None:
        return instance.order
    waiting = [0] * instance.size
    for arcs in instance.out:
        for j, weight in arcs:
            waiting[j] += weight > 0
    order = [i for i in range(instance.size) if waiting[i] == 0]
    for i in order:
        for j, weight in instance.out[i]:
            if weight > 0:
                waiting[j] -= 1
                if waiting[j] == 0:
                    order.append(j)
    return order


def _load(instance: Instance) -> list[int]:
    """Minutes times share of the capacities, in thousandths."""
    return [
        minutes * sum(1000 * u // c for u, c in zip(use, instance.capacity, strict=True) if c)
        for minutes, use in zip(instance.duration, instance.uses, strict=True)
    ]


def _work_behind(instance: Instance, followers: list[int]) -> list[int]:
    load = [w + minutes for w, minutes in zip(_load(instance), instance.duration, strict=True)]
    behind = []
    for i, bits in enumerate(followers):
        behind.append(load[i] + sum(w for j, w in enumerate(load) if bits >> j & 1))
    return behind
