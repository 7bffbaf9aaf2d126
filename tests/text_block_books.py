"""Text blocks for the tests: a base spec of an invented book, changed key by key."""

from __future__ import annotations

from functools import cache
from typing import Any

import yaml

import foredge_end_papers.cloth_jointed
import foredge_end_papers.sewn
import foredge_end_papers.tipped
import foredge_sewings.link_stitch
import foredge_sewings.long_stitch
import foredge_sewings.tapes
import foredge_stages.text_block
from foredge.contract import Book, Problem, Quantity, Severity, StageResult, Upstream
from foredge.quantity import Band, band
from foredge.registry import Registry
from foredge.testing import book_from, diagnostics_of, registry_of

MODULES = (
    foredge_end_papers.cloth_jointed,
    foredge_end_papers.sewn,
    foredge_end_papers.tipped,
    foredge_sewings.link_stitch,
    foredge_sewings.long_stitch,
    foredge_sewings.tapes,
    foredge_stages.text_block,
)
PLUGINS = tuple(module.PLUGIN for module in MODULES)

STOCK: dict[str, Any] = {
    "chart-paper": {
        "kind": "sheet", "width": "440 mm", "height": "600 mm", "grain": "width", "count": 24,
        "grammage": "90 g/m2", "material": "chart",
    },
    "ledger": {
        "kind": "sheet", "width": "500 mm", "height": "700 mm", "grain": "width",
        "thickness": "0.1 mm", "grammage": "80 g/m2", "material": "book",
    },
    "linen": {"kind": "thread", "size": "25/3", "length": "20 m", "material": "linen"},
    "tape": {"kind": "tape", "width": "13 mm", "thickness": "0.3 mm", "length": "2 m"},
}  # fmt: skip

TEXT_BLOCK: dict[str, Any] = {
    "paper": "chart-paper",
    "leaf": {"width": "150 mm", "height": "205 mm"},
    "gatherings": {"count": 10, "folios": 4},
    "sewing": {"use": "tapes", "thread": "linen", "tape": "tape"},
    "end_papers": {"use": "sewn"},
}


@cache
def registry() -> Registry:
    """Only the text block and its parts."""
    return registry_of(*PLUGINS, builtins=False)


def spec(stock: dict[str, Any] | None = None, **changes: Any) -> str:
    """The base spec; ``changes`` replace keys of ``text_block`` (None takes one out).

    ``stock`` adds to an item of the shelf, or a new item. ``top`` holds top-level keys.
    """
    top = changes.pop("top", {})
    shelf = {name: {**item} for name, item in STOCK.items()}
    for name, item in (stock or {}).items():
        shelf[name] = {**shelf.get(name, {}), **item}
        shelf[name] = {key: value for key, value in shelf[name].items() if value is not None}
    block = {key: value for key, value in {**TEXT_BLOCK, **changes}.items() if value is not None}
    whole = {"foredge": 1, "title": "The Prompt Book", "stock": shelf, "text_block": block}
    return yaml.safe_dump({**whole, "case": {}, **top}, sort_keys=False)


def book(stock: dict[str, Any] | None = None, **changes: Any) -> Book:
    """The book of :func:`spec`."""
    return book_from(spec(stock, **changes), registry=registry())


def made(stock: dict[str, Any] | None = None, **changes: Any) -> StageResult:
    """What the stage makes of :func:`spec`."""
    return foredge_stages.text_block.PLUGIN.run(book(stock, **changes), Upstream())


def refused(stock: dict[str, Any] | None = None, **changes: Any) -> list[str]:
    """What is said of :func:`spec` before the stage runs."""
    return diagnostics_of(spec(stock, **changes), registry=registry())


def quantity(result: StageResult, key: str) -> Quantity:
    """The quantity ``text_block.<key>``."""
    return result.quantity(f"text_block.{key}")


def value(result: StageResult, key: str) -> float:
    """Its value in canonical units."""
    return quantity(result, key).value


def band_of(result: StageResult, key: str) -> Band:
    """Its 95 % range."""
    return band(quantity(result, key))


def rules(result: StageResult) -> dict[str, Problem]:
    """The problems by their rule."""
    return {problem.rule: problem for problem in result.problems}


def errors(result: StageResult) -> list[str]:
    """The rules of the errors."""
    return [p.rule for p in result.problems if p.severity is Severity.ERROR]
