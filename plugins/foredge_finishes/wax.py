"""Wax: the last coat of all; nothing holds on it."""

from __future__ import annotations

from foredge.contract import FinishOptions, Text, say
from foredge_finishes.coat import PaintedFinish, Put


class WaxOptions(FinishOptions, frozen=True, kw_only=True, tag="wax"):
    """Wax polish."""


class Wax(PaintedFinish):
    """Keeps painted faces from sticking."""

    name = "wax"
    title = "Wax"
    options = WaxOptions
    role = "wax"
    row = "wax"
    verb = "Wax"
    follows = True
    tools = ("lint-free rag", "soft shoe brush")

    def steps(self, put: Put) -> tuple[Text, ...]:
        """Thin, haze, buff."""
        made = put.amounts
        often = (
            (say("Do it {coats} times in all.", coats=made.coats),) if made.coats.value > 1 else ()
        )
        return (
            say("Look once more: after this nothing can be painted."),
            say("Rub {coat} thinly over it, into the hollows with the brush.", coat=made.coat),
            say("Leave it {touch} to haze, then buff.", touch=put.times.touch),
            *often,
        )


PLUGIN = Wax()
