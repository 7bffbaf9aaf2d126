"""Damp clay that was shut in."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity
from foredge_rules.telling import between, done_place, hours, told

SOON = 0.6
"""Share of the drying time below which no clay is dry. From memory."""


@dataclass(frozen=True, slots=True)
class SealedBeforeDry:
    """The sheet's own order waits; only what is done already can break it."""

    kind: str = "rule"
    name: str = "sealed-before-dry"
    title: str = "Clay sealed in before it is dry"
    severity: Severity = Severity.WARNING
    consequence: str = "Water is shut in: mould months later, and cracks"
    remedy: str = (
        "Open it up again, let it stand in moving air, and test it once more before going on"
    )
    source: str = (
        "Ultimate Paper Mache, 'How to keep mold from ruining your paper mache'; from memory"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each relief tested too soon after its last wet clay, or covered untested."""
        done = build.book.done
        for damp in build.plan.moisture.damp:
            check = damp.test
            if check not in done:
                shut = [one for one in damp.shut_by if one in done]
                if shut:
                    yield told(
                        self,
                        done_place(build, shut[0]),
                        f"'{shut[0]}' is done, and '{check}' is not",
                    )
                continue
            waited, wanted = between(done.get(damp.wetted, ""), done[check]), damp.wait.value
            if waited is not None and waited < wanted * SOON:
                yield told(
                    self,
                    done_place(build, check),
                    f"the relief on the {damp.what} was tested {hours(max(waited, 0.0))} after "
                    f"'{damp.wetted}', and it takes about {hours(wanted)} to dry",
                )


PLUGIN = SealedBeforeDry()
