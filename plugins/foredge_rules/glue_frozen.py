"""Glue or paint that stood in frost."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, Supply
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class GlueFrozen:
    """Ice pushes the droplets of an emulsion together, and they stay so."""

    kind: str = "rule"
    name: str = "glue-frozen"
    title: str = "Glue or paint that was frozen"
    severity: Severity = Severity.WARNING
    consequence: str = "It is lumpy or thin when it thaws, makes no film, and holds nothing"
    remedy: str = "Throw it out and buy fresh; keep glue and acrylic paint above freezing"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each supply of the shelf that was frozen, by the step that would use it first."""
        titles = {one.id: one.title for one in build.order}
        spoilt = _emulsions(build)
        for line in build.plan.ledger.lines:
            item = build.book.stock.get(line.stock or "")
            if not isinstance(item, Supply) or "frozen" not in item.state:
                continue
            label = item.material or line.stock or ""
            if _bare(label) not in spoilt and _bare(line.material) not in spoilt:
                continue
            first = titles.get(next(iter(line.steps), ""), "")
            where = f", and is wanted for '{first}'" if first else ""
            yield told(
                self, ("stock", line.stock or "", "state"), f"'{line.stock}' has been frozen{where}"
            )


def _emulsions(build: Build) -> set[str]:
    """Names of the glues with water in them, and of all paints but wax."""
    glues = [row for row in build.tables.rows("adhesives") if row.get("water").number > 0]
    paints = [row for row in build.tables.rows("paints") if row.name != "wax"]
    return {_bare(name) for row in (*glues, *paints) for name in (row.name, row.title)}


def _bare(name: str) -> str:
    return name.partition(" (")[0].replace("-", " ").casefold()


PLUGIN = GlueFrozen()
