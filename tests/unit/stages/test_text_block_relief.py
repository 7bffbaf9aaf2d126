"""What a relief on a board changes in the block: wider super, muslin, longer tapes, warnings."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import Any

import pytest

import foredge_stages.text_block
from foredge.contract import Part, StageResult, Upstream
from text_block_books import book, rules, value


def relieved(on: str | None = "front", **changes: Any) -> StageResult:
    """The base book with something raised ``on`` a panel; only its place is looked at."""
    options = SimpleNamespace(made_on="covered-case", on=on)
    part: Part[Any] = Part(SimpleNamespace(name="relief"), options, ("embellishment", 0))
    with_relief = replace(book(**changes), embellishment=(part,) if on else ())
    return foredge_stages.text_block.PLUGIN.run(with_relief, Upstream())


def test_the_super_is_wider_and_of_muslin() -> None:
    plain, raised = relieved(None), relieved()
    assert (value(plain, "super.flange"), value(raised, "super.flange")) == (28, 38)
    material = {p.name: p.material for p in raised.pieces}["text_block.super"]
    assert "Muslin" in material
    assert "Super" in {p.name: p.material for p in plain.pieces}["text_block.super"]


@pytest.mark.parametrize("on", ["spine", "paste-downs"])
def test_only_boards_count(on: str) -> None:
    assert value(relieved(on), "super.flange") == 28


def test_tapes_reach_further_onto_the_board() -> None:
    assert value(relieved(), "tape.lap") > value(relieved(None), "tape.lap")


def test_weak_hinges_warn() -> None:
    assert "super-narrow-under-relief" in rules(relieved(super={"flange": "25 mm"}))
    assert "super-narrow-under-relief" not in rules(relieved(None, super={"flange": "25 mm"}))
