"""School or wood glue where a book is held together for good."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, Supply
from foredge_rules.telling import told

LASTING = ("text-block", "case")
"""Stages whose glue the book hangs on."""


@dataclass(frozen=True, slots=True)
class GlueNotLasting:
    """It is sour, and turns brittle in decades."""

    kind: str = "rule"
    name: str = "glue-not-lasting"
    title: str = "School or wood glue in a lasting book"
    severity: Severity = Severity.WARNING
    consequence: str = "It is more acid than glue for books, and turns brittle in decades"
    remedy: str = (
        "Take a neutral white glue for spine and paste-downs and keep this one for the clay; for a "
        "journal of a few years, accept it"
    )
    source: str = "r/bookbinding, 'How long will a book last if I don't use...'"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each such glue on the shelf that the block or the case is glued with."""
        titles = {one.id: one.title for one in build.order}
        for name, item in build.book.stock.items():
            if not isinstance(item, Supply) or item.made_for not in ("school", "wood"):
                continue
            steps = [one for one in _steps(build, name) if one.partition(".")[0] in LASTING]
            if steps:
                last = titles[steps[-1]]
                more = f" and {len(steps) - 1} more" if len(steps) > 1 else ""
                yield told(
                    self,
                    ("stock", name, "made_for"),
                    f"'{name}' is {item.made_for} glue, and holds the book in '{last}'"
                    f"{more} {'steps' if len(steps) > 2 else 'step' if more else ''}".rstrip(),
                )


def _steps(build: Build, stock: str) -> Iterator[str]:
    """Operations that take this item from the shelf, in the order of work."""
    used = {step for line in build.plan.ledger.lines if line.stock == stock for step in line.steps}
    return (one.id for one in build.order if one.id in used)


PLUGIN = GlueNotLasting()
