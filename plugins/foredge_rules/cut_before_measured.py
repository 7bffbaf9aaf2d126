"""Cut to its final size while the gate before it is still open."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import done_place, told


@dataclass(frozen=True, slots=True)
class CutBeforeMeasured:
    """The sheet stops before such a step; what is done already did not."""

    kind: str = "rule"
    name: str = "cut-before-measured"
    title: str = "Final pieces cut before they were measured for"
    severity: Severity = Severity.WARNING
    consequence: str = "They were cut by an estimate, and may not fit"
    remedy: str = (
        "Measure now and write it under measured; compare what is cut with the new sizes, and cut "
        "again what is off"
    )
    source: str = "common practice"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each finished operation that should have waited for a reading the spec lacks."""
        gates = {gate.id: gate for gate in build.whole.gates}
        for operation in build.order:
            if operation.id not in build.book.done:
                continue
            missing = [
                reading.label
                for name in operation.stops_for
                if name in gates
                for reading in gates[name].readings
                if reading.key not in build.book.readings
            ]
            if missing:
                yield told(
                    self,
                    done_place(build, operation.id),
                    f"'{operation.id}' is done, and nobody has written down: {', '.join(missing)}",
                )


PLUGIN = CutBeforeMeasured()
