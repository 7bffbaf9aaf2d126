"""Water brought to the book: who gets wet, on which side, and when it is dry enough.

What a stage knows of water stands in the wettings of its operations. Here they are put in the
order of work, and looked at together: rules and sheets read the result.
"""

from __future__ import annotations

from collections.abc import Iterator

from foredge.contract import Build, Moisture, Operation, Problem, Quantity, reliefs_of, total
from foredge.contract.moisture import Damp, OneSided, Ready, Wet
from foredge.plan.water.balance import balances

BOARDS = ("board-front", "board-back")


def plan_moisture(build: Build) -> tuple[Moisture, list[Problem]]:
    """The moisture ledger; the rules tell what is wrong with it."""
    wettings = tuple(_wettings(build))
    return (
        Moisture(
            wettings=wettings,
            ready=tuple(_ready(build, wettings)),
            one_sided=tuple(_one_sided(build, wettings)),
            damp=tuple(_damp(build)),
            balance=balances(build),
        ),
        [],
    )


def _wettings(build: Build) -> Iterator[Wet]:
    for operation in build.order:
        for one in operation.wettings:
            yield Wet(operation.id, one.what, one.side, one.water, one.dry_after, one.one_way)


def _ready(build: Build, wettings: tuple[Wet, ...]) -> Iterator[Ready]:
    """When the boards may be covered, the clay painted, the book closed, and posted."""
    facts, order = dict(build.whole.facts), {one.id: one for one in build.order}
    place = {name: at for at, name in enumerate(order)}
    covered = next((at for at, one in enumerate(build.order) if _covers(one)), -1)
    boards = [one for one in wettings if one.what in BOARDS and place[one.operation] < covered]
    if boards:
        yield Ready("cover", boards[-1].operation, boards[-1].dry_after)
    dry = facts.get("sculpt.dry", "")
    if dry in order:
        yield Ready("paint", dry)
    for step in ("close", "post"):
        last = facts.get(f"finishing.may_{step}", "")
        if last in order:
            yield Ready("close" if step == "close" else "post", last, order[last].wait)


def _covers(operation: Operation) -> bool:
    """Whether it glues a covering on a board."""
    return operation.stage == "case" and any(
        one.layer and one.side == "outside" for one in operation.wettings
    )


def _one_sided(build: Build, wettings: tuple[Wet, ...]) -> Iterator[OneSided]:
    """Boards that get wet clay outside before anything is put on their inside.

    What a board got before it was cut to size (the glue between its layers) balances nothing.
    Covering is no such wetting: the paste-down pulls against it within days.
    """
    place = {one.id: at for at, one in enumerate(build.order)}
    cut = place.get(dict(build.whole.facts).get("case.boards_cut", ""), -1)
    for board in BOARDS:
        own = [one for one in wettings if one.what == board and place[one.operation] > cut]
        clay = [one for one in own if _is_skin(one.operation) and one.water is not None]
        if not clay:
            continue
        first = place[clay[0].operation]
        against = [
            one for one in own if one.side in ("inside", "both") and place[one.operation] < first
        ]
        if not against:
            water: list[Quantity] = [one.water for one in clay if one.water is not None]
            yield OneSided(board, clay[0].operation, total(water))


def _is_skin(operation: str) -> bool:
    return operation.startswith("sculpt.skin-")


def _damp(build: Build) -> Iterator[Damp]:
    """Each relief: its last wet clay, the test, and what shuts it in after that."""
    for relief in reliefs_of(build.book):
        on = relief.options.on
        test = f"sculpt.check-dry-{on}"
        names = (f"sculpt.skin-{on}-", f"sculpt.fill-cracks-{on}")
        wet = [one for one in build.order if one.id.startswith(names)]
        if not wet or wet[-1].wait is None:
            continue
        yield Damp(on, wet[-1].id, wet[-1].wait, test, _shutting(build.order, test))


def _shutting(order: tuple[Operation, ...], test: str) -> tuple[str, ...]:
    """What must come after ``test`` because it shuts the clay in, in the order of work."""
    before = {name for one in order if one.id == test for name in one.before_any}
    return tuple(one.id for one in order if one.id in before)
