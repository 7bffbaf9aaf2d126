"""A closure that has not been set when the paste-downs are on."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import BEFORE_PASTE_DOWNS, Build, Problem, Severity
from foredge_rules.telling import between, done_place, told

SET = "finishing.set-closure"


@dataclass(frozen=True, slots=True)
class ClosureAfterPasteDown:
    """The order of work prevents it; what is done already may not."""

    kind: str = "rule"
    name: str = "closure-after-paste-down"
    title: str = "A closure set after the paste-downs"
    severity: Severity = Severity.WARNING
    consequence: str = "Its ends cannot lie under the paste-downs: they show, and hold badly"
    remedy: str = (
        "Cover the ends with a second paste-down, or take a closure that is put on outside"
    )
    source: str = (
        "Book Arts list, June 2000 (a button sewn on before the end-papers); Ibizzweb, 'Leather "
        "book inspiration (with magnetic snaps)'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Casing-in is done, and setting the closure is not, or was later."""
        if SET not in {operation.id for operation in build.order}:
            return
        done = build.book.done
        for cased in BEFORE_PASTE_DOWNS:
            if cased not in done:
                continue
            if SET not in done:
                yield told(
                    self,
                    done_place(build, cased),
                    f"'{cased}' is done, and '{SET}' is not",
                )
                return
            apart = between(done[SET], done[cased])
            if apart is not None and apart < 0:
                yield told(self, done_place(build, SET), f"'{SET}' was done after '{cased}'")
                return


PLUGIN = ClosureAfterPasteDown()
