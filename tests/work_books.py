"""Builds for the plan of the work: operations and a bench, and nothing else that matters."""

from __future__ import annotations

from dataclasses import replace

from foredge.contract import (
    RATIO,
    TIME,
    Bench,
    Build,
    Operation,
    Origin,
    Quantity,
    SoonAfter,
    StageResult,
    count,
    leaf,
    say,
)
from foredge.plan.evenings.plan import plan_work
from foredge.plan.order import order
from foredge.problem import Problem
from unit.emit.sample import sample

ALL_DAY = "Mon-Sun 00:00-23:59"


def time(minutes: float) -> Quantity:
    return leaf(minutes * 60, TIME, "t", Origin("default"))


def number(value: int) -> Quantity:
    return count(value, "n", Origin("default"))


def share(value: float) -> Quantity:
    return leaf(value, RATIO, "share", Origin("default"))


def op(name: str, minutes: float = 20, wait: float = 0, **more: object) -> Operation:
    """``case.<name>``; what comes before it may be named in short, too."""
    after = tuple(f"case.{one}" for one in more.pop("after", ()))  # type: ignore[attr-defined]
    soon = more.pop("soon", None)
    if soon is not None:
        more["soon_after"] = (SoonAfter(f"case.{soon[0]}", time(soon[1]), "it spoils"),)  # type: ignore[index]
    return Operation(
        id=f"case.{name}",
        title=name.capitalize(),
        steps=(say("Do it."),),
        hands_on=time(minutes),
        wait=time(wait) if wait else None,
        after=after,
        **more,  # type: ignore[arg-type]
    )


def build(
    *operations: Operation,
    bench: Bench | None = None,
    done: dict[str, str] | None = None,
    copies: int = 1,
    title: str = "The Tide Table",
    facts: tuple[tuple[str, str], ...] = (),
) -> Build:
    base = sample()
    ordered, problems = order(operations, ("case",))
    assert not problems
    book = replace(
        base.book,
        title=title,
        bench=bench or Bench(),
        done={f"case.{name}": when for name, when in (done or {}).items()},
        copies=number(copies),
    )
    whole = StageResult(operations=tuple(operations), facts=facts)
    return replace(base, book=book, order=ordered, whole=whole, diagnostics=())


def planned(*operations: Operation, **more: object) -> tuple[Build, list[Problem]]:
    """The build with its plan of the work, and what is said about it."""
    made = build(*operations, **more)  # type: ignore[arg-type]
    work, problems = plan_work(made)
    return replace(made, plan=replace(made.plan, work=work)), problems
