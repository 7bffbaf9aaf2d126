"""The order of work: one true order of all operations, whatever stage they belong to.

What must come before what is the operations' own business. Where that leaves a choice, the
order is the one that reads best at the bench: long waits that rest on nothing else begin
early, nothing is begun while it could not be gone on with for hours, and within that the
work stays with the stage in hand.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from difflib import get_close_matches
from graphlib import CycleError, TopologicalSorter

from foredge.contract import Gate, Operation, Problem, error

LONG_WAIT = 6 * 3600.0
"""A wait from here on is begun early when little work leads to it."""

SHORT_WAIT = 2 * 3600.0
"""Below this the maker stays with the work instead of turning to another part of the book."""

SHORT_LEAD = 90 * 60.0
"""Hands-on time that may lead to a long wait begun early."""

Before = dict[str, set[str]]
"""Operation -> the operations that must come before it."""


def order(
    operations: Sequence[Operation], stage_order: Sequence[str], gates: Iterable[Gate] = ()
) -> tuple[tuple[Operation, ...], list[Problem]]:
    """Every operation in the order of work, and what is wrong with it.

    An operation that stops for one of ``gates`` comes after the operation at whose end
    that gate is taken. On an unknown id the rest is ordered all the same; on a cycle there
    is no order, and the operations are returned as they were declared.
    """
    known: dict[str, Operation] = {}
    problems: list[Problem] = []
    for operation in operations:
        if operation.id in known:
            problems.append(
                _problem(operation, f"there are two operations '{operation.id}'", "operation-twice")
            )
        known.setdefault(operation.id, operation)
    before, unknown = relations(known, {gate.id: gate.after for gate in gates})
    problems += unknown
    try:
        TopologicalSorter(before).prepare()
    except CycleError as failure:
        problems.append(_cycle(known, list(failure.args[1])))
        return tuple(known.values()), problems
    return _sequence(known, before, stage_order), problems


def relations(
    known: Mapping[str, Operation], gates: Mapping[str, str]
) -> tuple[Before, list[Problem]]:
    """What must come before each operation, over all stages; and references to nothing.

    ``gates`` is gate -> the operation at whose end it is taken.
    """
    before: Before = {name: set() for name in known}
    problems: list[Problem] = []
    for operation in known.values():
        taken = [gates[gate] for gate in operation.stops_for if gate in gates]
        for name in (*operation.after, *taken):
            if name in known:
                before[operation.id].add(name)
            else:
                problems.append(_unknown(operation, name, known))
        before[operation.id].update(name for name in operation.after_any if name in known)
        for name in operation.before_any:
            if name in known:
                before[name].add(operation.id)
    return before, problems


def _problem(operation: Operation, text: str, rule: str, remedy: str = "") -> Problem:
    section = operation.stage.replace("-", "_")
    return error((section,), text, rule, on_key=True, remedy=remedy)


def _unknown(operation: Operation, name: str, known: Mapping[str, Operation]) -> Problem:
    near = get_close_matches(name, known, n=3)
    hint = f"; near: {', '.join(near)}" if near else ""
    return _problem(
        operation,
        f"the operation '{operation.id}' must come after '{name}', which is nowhere{hint}",
        "operation-unknown",
        "This is a fault in the plugin, not in the spec",
    )


def _cycle(known: Mapping[str, Operation], ids: list[str]) -> Problem:
    # graphlib lists each before the next and repeats the first; begin where it is smallest.
    ring = ids[:-1]
    start = ring.index(min(ring))
    ring = ring[start:] + ring[:start]
    words = " -> ".join([*ring, ring[0]])
    return _problem(
        known[ring[0]],
        f"these operations wait for each other: {words}",
        "operation-cycle",
        "This is a fault in the plugins, not in the spec",
    )


def _sequence(
    known: Mapping[str, Operation], before: Before, stage_order: Sequence[str]
) -> tuple[Operation, ...]:
    """Serial generation: always the best of what could be begun next, on a clock of its own."""
    stages = {name: place for place, name in enumerate(stage_order)}
    declared = {name: place for place, name in enumerate(known)}
    early = _early(known, before)
    left = {name: set(needs) for name, needs in before.items()}
    finish: dict[str, float] = {}
    last: Operation | None = None
    clock = 0.0
    done: list[Operation] = []

    def start(name: str) -> float:
        return max([clock, *(finish[need] for need in before[name])])

    def rank(name: str) -> tuple[float | int, ...]:
        operation = known[name]
        return (
            start(name),
            early.get(name, len(known)),
            0 if last is not None and last.id in before[name] else 1,
            0 if last is not None and last.stage == operation.stage else 1,
            stages.get(operation.stage, len(stages)),
            declared[name],
        )

    while left:
        chosen = min((name for name, needs in left.items() if not needs), key=rank)
        last = known[chosen]
        clock = start(chosen) + last.hands_on.value
        finish[chosen] = clock + _counted_wait(last)
        del left[chosen]
        for needs in left.values():
            needs.discard(chosen)
        done.append(last)
    return tuple(done)


def _wait(operation: Operation) -> float:
    return operation.wait.value if operation.wait is not None else 0.0


def _counted_wait(operation: Operation) -> float:
    wait = _wait(operation)
    return wait if wait >= SHORT_WAIT else 0.0


def _early(known: Mapping[str, Operation], before: Before) -> dict[str, int]:
    """Rank of the operations that lead quickly to a long wait: the longest wait first.

    Whatever stops for a gate, or leads through another long wait, does not count.
    """
    waits = [(name, _wait(known[name])) for name in known if _wait(known[name]) >= LONG_WAIT]
    ranks: dict[str, int] = {}
    for place, (name, _) in enumerate(sorted(waits, key=lambda entry: -entry[1])):
        leading = _leading(name, before)
        work = sum(known[one].hands_on.value for one in leading)
        held = any(
            known[one].stops_for or (one != name and _wait(known[one]) >= LONG_WAIT)
            for one in leading
        )
        if work <= SHORT_LEAD and not held:
            for one in leading:
                ranks.setdefault(one, place)
    return ranks


def _leading(name: str, before: Before) -> set[str]:
    """``name`` and everything that must come before it."""
    seen = {name}
    queue = [name]
    while queue:
        for need in before[queue.pop()]:
            if need not in seen:
                seen.add(need)
                queue.append(need)
    return seen
