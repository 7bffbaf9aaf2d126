"""Damp clay that was shut in."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import between, done_place, hours, told, wait_of

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
        for relief in reliefs_of(build.book):
            on = relief.options.on
            check = f"sculpt.check-dry-{on}"
            if check not in done:
                shut = [one for one in _closing(build, check) if one in done]
                if shut:
                    yield told(
                        self,
                        done_place(build, shut[0]),
                        f"'{shut[0]}' is done, and '{check}' is not",
                    )
                continue
            wet = _last_wet(build, on)
            waited, wanted = between(done.get(wet, ""), done[check]), wait_of(build, wet)
            if waited is not None and waited < wanted * SOON:
                yield told(
                    self,
                    done_place(build, check),
                    f"the relief on the {on} was tested {hours(max(waited, 0.0))} after "
                    f"'{wet}', and it takes about {hours(wanted)} to dry",
                )


def _closing(build: Build, check: str) -> list[str]:
    """What shuts the clay in, in the order of work; coats are told by their own rule."""
    before = {name for one in build.order if one.id == check for name in one.before_any}
    return [one.id for one in build.order if one.id in before]


def _last_wet(build: Build, on: str) -> str:
    """The last operation that puts wet clay on a panel."""
    names = (f"sculpt.skin-{on}-", f"sculpt.fill-cracks-{on}")
    return [one.id for one in build.order if one.id.startswith(names)][-1]


PLUGIN = SealedBeforeDry()
