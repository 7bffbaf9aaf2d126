"""Second-hand stuff that comes onto the bench as it was found."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Flat, Linear, Problem, Severity, StockItem
from foredge_rules.telling import hours, told

USED = ("second-hand", "old")


@dataclass(frozen=True, slots=True)
class ThriftNotQuarantined:
    """Mould and insects move from one thing to the next."""

    kind: str = "rule"
    name: str = "thrift-not-quarantined"
    title: str = "Second-hand stuff without quarantine"
    severity: Severity = Severity.WARNING
    consequence: str = "Mould and insects move into the finished book, and from it to its shelf"
    remedy: str = (
        "Look it through, and say under state what you found: clean; musty or insects, and it is "
        "bagged and frozen first. What is mouldy is thrown out"
    )
    source: str = (
        "House Digest, on freezing thrifted books; University of Rochester, Rare Books, Special "
        "Collections and Preservation, on mould"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each item of cloth, paper, board, thread or tape; a note where nobody has looked."""
        wait = build.book.table("drying", "quarantine", "next").value
        for name, item in build.book.stock.items():
            if not isinstance(item, Flat | Linear):
                continue
            fault = _fault(name, item, wait)
            if fault is not None:
                key, text, severity = fault
                yield told(self, ("stock", name, key), text, severity)


def _fault(name: str, item: StockItem, wait: float) -> tuple[str, str, Severity] | None:
    """The key that says it, the text, and how bad it is."""
    alive = [word for state, word in _FREEZES.items() if state in item.state]
    if "clean" in item.state and len(set(item.state) - _NOTHING) > 1:
        others = " and ".join(one for one in item.state if one not in ("clean", *_NOTHING))
        text = f"'{name}' is said to be clean, and {others} as well"
        return "state", text, Severity.WARNING
    if "mouldy" in item.state:
        text = f"'{name}' is mouldy, and freezing does not take mould out"
        return "state", text, Severity.WARNING
    if alive and item.quarantined is False:
        text = f"'{name}' {' and '.join(alive)}, and will not be frozen; that takes {hours(wait)}"
        return "quarantined", text, Severity.WARNING
    looked = set(item.state) - _NOTHING
    if item.found in USED and not looked and item.quarantined is None:
        text = f"'{name}' is {item.found}, and nobody says that it was looked through"
        return "found", text, Severity.NOTE
    return None


_NOTHING = {"painted", "frozen"}
"""States that say nothing of mould or insects."""

_FREEZES = {"musty": "smells musty", "insects": "has insects"}


PLUGIN = ThriftNotQuarantined()
