"""What the book costs and what the work earns, ready to be laid out."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import Build, Cost, MaterialCost, Quantity, Sum
from foredge.emit.escape import escape
from foredge.emit.shopping import called, counted
from foredge.emit.work import step_numbers
from foredge.plan.cost.money import money, worked
from foredge.quantity import band
from foredge.spec.words import listed


@dataclass(frozen=True, slots=True)
class MaterialRow:
    """A priced material: by the share used, in whole units from nothing, to be bought now.

    ``whole`` is the work's need of it.
    """

    material: str
    need: str
    used: str
    afresh: str
    now: str
    how: str
    whole: Quantity


@dataclass(frozen=True, slots=True)
class SumRow:
    """A sum of money: of all copies, of one of them, and how it came about."""

    label: str
    all: str
    each: str
    how: str


@dataclass(frozen=True, slots=True)
class HoursRow:
    """Hands-on time of a stage: a book made alone, all copies.

    ``times`` are both as computed; None in the last row, which adds the others up.
    """

    title: str
    one: str
    all: str
    times: tuple[Quantity, Quantity] | None


@dataclass(frozen=True, slots=True)
class CostView:
    """The money section. ``earned`` and ``unpriced`` are sentences, empty where not known."""

    copies: int
    materials: tuple[MaterialRow, ...]
    sums: tuple[SumRow, ...]
    hours: tuple[HoursRow, ...]
    earned: str
    unpriced: str
    batch: str


def cost_view(build: Build) -> CostView | None:
    """The money of the book; None where nothing is priced."""
    cost = build.plan.cost
    if cost is None:
        return None
    return CostView(
        copies=cost.copies,
        materials=tuple(_material(build, cost, one) for one in cost.materials),
        sums=tuple(_sum(cost, one) for one in cost.sums),
        hours=(
            *(HoursRow(escape(one.title), worked(one.one.value), worked(one.all.value),
                       (one.one, one.all)) for one in cost.hours),
            HoursRow("all of it", _ranged(cost.one), _ranged(cost.all), None),
        ),
        earned=_earned(cost),
        unpriced="; ".join(escape(one) for one in cost.unpriced),
        batch=_batch(build, cost),
    )  # fmt: skip


def _material(build: Build, cost: Cost, one: MaterialCost) -> MaterialRow:
    return MaterialRow(
        material=called(build, one.line),
        need=counted(build, one.line, one.line.need),
        used=money(one.used.amount, cost.currency),
        afresh=f"{money(one.afresh.amount, cost.currency)} ({one.afresh.how})",
        now="nothing" if one.now is None else f"{money(one.now.amount, cost.currency)}",
        how=one.used.how,
        whole=one.line.need,
    )


def _sum(cost: Cost, one: Sum) -> SumRow:
    """A price for one book has no sum of all copies."""
    told, for_one = money(one.amount, cost.currency), one.key == "pays"
    if cost.copies == 1:
        return SumRow(one.label, told, "", one.how)
    each = told if for_one else money(one.amount / cost.copies, cost.currency)
    return SumRow(one.label, "" if for_one else told, each, one.how)


def _ranged(time: Quantity) -> str:
    """The time with its 95 % range."""
    spread = band(time)
    told = worked(time.value)
    if spread.exact:
        return told
    return f"{told} ({worked(max(0.0, spread.low))} to {worked(spread.high)})"


def _earned(cost: Cost) -> str:
    if cost.earned is None:
        return ""
    middle, low, high = (money(amount, cost.currency) for amount in cost.earned)
    ends = f" ({low} to {high}, by how long it takes you)" if low != high else ""
    if cost.earned[0] < 0:
        return "At the price asked your work earns nothing: the price does not cover what is paid."
    return f"At the price asked, an hour of your work earns {middle}{ends}."


def _batch(build: Build, cost: Cost) -> str:
    """The steps that are done once for all copies."""
    numbers = step_numbers(build)
    return listed(numbers[one] for one in cost.batch if one in numbers)
