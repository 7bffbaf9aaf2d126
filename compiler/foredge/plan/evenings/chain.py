"""The longest chain of work and waits: what no calendar can shorten."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from foredge.contract import Chain

Timing = tuple[int, int]
"""Minutes of hands-on work, and of the wait after it."""


def longest_chain(
    order: Sequence[str], times: Mapping[str, Timing], before: Mapping[str, set[str]]
) -> Chain:
    """The chain over ``order``, which must be a true order of ``before``.

    As long as one pair of hands needs at the least for all of it, where that is longer.
    """
    ready: dict[str, int] = {}
    led_by: dict[str, str] = {}
    for name in order:
        needs = sorted(need for need in before.get(name, ()) if need in ready)
        begin = 0
        for need in needs:
            if ready[need] > begin:
                begin, led_by[name] = ready[need], need
        ready[name] = begin + sum(times[name])
    hands_on = sum(times[name][0] for name in order)
    if not ready:
        return Chain(0, 0, ())
    last = max(ready, key=lambda name: ready[name])
    links = [last]
    while links[-1] in led_by:
        links.append(led_by[links[-1]])
    return Chain(max(ready[last], hands_on), hands_on, tuple(reversed(links)))
