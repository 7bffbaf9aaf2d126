"""Card of another kind stacked under one face of a board."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Any

from foredge.contract import Build, Problem, Severity, board_figures, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CardCorePulls:
    """Each paper shrinks by its own measure."""

    kind: str = "rule"
    name: str = "card-core-pulls"
    title: str = "Stiff card stacked on one face of a board"
    severity: Severity = Severity.WARNING
    consequence: str = "Card and board shrink differently, and the board pulls hollow"
    remedy: str = (
        "Stack the card the board is made of, grain the same way, dry between; or take a core of "
        "foil"
    )
    source: str = (
        "Creative Paper Mache, 'Warping'; Ultimate Paper Mache, 'Relief sculpture warping'"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each core of card that is not the boards' own."""
        boards = build.book.sections["case"].boards
        own = dict(_kinds(build, boards.options))
        for relief in reliefs_of(build.book):
            card = relief.options.core.card
            if card is None or card in own or _row(build, card) in own.values():
                continue
            layers = build.quantity(f"sculpt.card.{relief.options.on}.layers").value
            kinds = ", ".join(dict.fromkeys(own.values()))
            yield told(
                self,
                (*relief.path, "core", "card"),
                f"{layers:.0f} {'layers' if layers > 1 else 'layer'} of '{card}' "
                f"({_row(build, card)}) are glued on one face of a board of {kinds}",
            )


def _row(build: Build, stock: str) -> str:
    return board_figures(build.book, stock, "carton").row


def _kinds(build: Build, said: Any) -> Iterator[tuple[str, str]]:
    """Stock and row of everything the boards are made of."""
    if getattr(said, "layers", ()):
        for layer in said.layers:
            yield from _kinds(build, layer)
        return
    stock = getattr(said, "stock", None) or getattr(said, "card", None)
    row = getattr(said, "material", None) or "carton"
    yield stock or "", board_figures(build.book, stock, row).row


PLUGIN = CardCorePulls()
