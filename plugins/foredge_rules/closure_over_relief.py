"""A closure led over a relief."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Part, Problem, Severity
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class ClosureOverRelief:
    """A strap touches a relief only at its highest points."""

    kind: str = "rule"
    name: str = "closure-over-relief"
    title: str = "A closure that crosses a relief"
    severity: Severity = Severity.WARNING
    consequence: str = "It wears the paint off the highest points, and comes out short"
    remedy: str = "Lead it beside the relief, or take ties; fit its length after the relief is dry"
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each panel the closure crosses that has a relief higher than its neighbours bear."""
        closure = build.book.closure
        high = build.book.default("relief-high")
        for panel in _crossed(closure) if closure is not None else ():
            name = f"sculpt.height.{panel}"
            found = [q for q in build.whole.quantities if q.name == name and q.value > high.value]
            for relief in found:
                yield told(
                    self,
                    closure.path if closure is not None else (),
                    f"the closure crosses the relief on the {panel}, which stands "
                    f"{relief.value:.1f} mm high",
                )


def _crossed(closure: Part[object]) -> tuple[str, ...]:
    if getattr(closure.options, "over_relief", False):
        return ("front",)
    return tuple(getattr(closure.plugin, "crosses", ()))


PLUGIN = ClosureOverRelief()
