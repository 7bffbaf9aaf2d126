"""Books with reliefs for the tests of sculpt, skins and their rules; all stages are run."""

from __future__ import annotations

from functools import cache
from typing import Any

import yaml

from foredge.contract import Book, Operation, StageResult, Text, Upstream
from foredge.plan.order import order
from foredge.registry import Registry
from foredge.testing import book_from, registry_of

STOCK: dict[str, Any] = {
    "paper": {
        "kind": "sheet", "width": "420 mm", "height": "594 mm", "grain": "height",
        "grammage": "90 g/m2", "material": "book",
    },
    "board": {
        "kind": "board", "width": "500 mm", "height": "700 mm", "grain": "height",
        "thickness": "3 mm", "material": "greyboard",
    },
    "cloth": {
        "kind": "cloth", "width": "500 mm", "height": "400 mm", "grain": "height",
        "thickness": "0.3 mm", "material": "book-cloth",
    },
    "thread": {"kind": "thread", "size": "60/3", "material": "linen"},
}  # fmt: skip
DOME = {"use": "dome", "name": "boss", "diameter": "60 mm", "height": "10 mm"}
BALL = {"use": "dome", "name": "eye", "diameter": "16 mm", "height": "8 mm", "core": "rigid"}


@cache
def registry() -> Registry:
    """All built-ins."""
    return registry_of()


def relief(on: str = "front", made_on: str = "covered-case", **more: Any) -> dict[str, Any]:
    """One item of ``embellishment``; a dome unless ``parts`` says otherwise."""
    return {"use": "relief", "on": on, "made_on": made_on, "parts": [DOME], "id": on, **more}


def spec(*reliefs: dict[str, Any], **top: Any) -> str:
    """A plain book with these reliefs and further top-level keys."""
    whole = {
        "foredge": 1,
        "title": "The Prompt Book",
        "stock": STOCK,
        "text_block": {
            "paper": "paper",
            "leaf": {"width": "140 mm", "height": "194 mm"},
            "gatherings": {"count": 6, "folios": 4},
            "sewing": {"use": "link-stitch", "thread": "thread"},
            "end_papers": {"use": "sewn"},
        },
        "case": {
            "boards": {"use": "bought", "stock": "board"},
            "covering": {"use": "full-cloth", "material": "cloth"},
        },
    }
    if reliefs:
        whole["embellishment"] = list(reliefs)
    return yaml.safe_dump({**whole, **top}, sort_keys=False)


def upstream(book: Book) -> Upstream:
    """Text block and case of ``book``."""
    results: tuple[tuple[str, StageResult], ...] = ()
    for stage in registry().stages():
        if stage.name == "sculpt":
            break
        results = (*results, (stage.name, stage.run(book, Upstream(results))))
    return Upstream(results)


def made(*reliefs: dict[str, Any], **top: Any) -> StageResult:
    """What the stage makes of :func:`spec`."""
    book = book_from(spec(*reliefs, **top), registry=registry())
    stage = next(one for one in registry().stages() if one.name == "sculpt")
    return stage.run(book, upstream(book))


def work(*reliefs: dict[str, Any], **top: Any) -> list[Operation]:
    """Every operation of text block, case and sculpt in the order of work."""
    book = book_from(spec(*reliefs, **top), registry=registry())
    stage = next(one for one in registry().stages() if one.name == "sculpt")
    before = upstream(book)
    results = [*(result for _, result in before.results), stage.run(book, before)]
    operations = [one for result in results for one in result.operations]
    ordered, problems = order(operations, ("text-block", "case", "sculpt"))
    assert not problems, [problem.text for problem in problems]
    return list(ordered)


def ids(*reliefs: dict[str, Any], **top: Any) -> list[str]:
    """The ids of :func:`work`."""
    return [one.id for one in work(*reliefs, **top)]


def value(result: StageResult, name: str) -> float:
    """The value of ``sculpt.<name>`` in canonical units."""
    return result.quantity(f"sculpt.{name}").value


def operation(result: StageResult, name: str) -> Operation:
    """The operation ``sculpt.<name>``."""
    return next(one for one in result.operations if one.id == f"sculpt.{name}")


def words(one: Operation) -> str:
    """All its steps; quantities stand as names in braces."""
    return "\n".join(map(_sentence, one.steps))


def _sentence(step: Text) -> str:
    """Its template, with what stands in it as words; quantities stay names in braces."""
    said = step.template
    for name, value in step.values.items():
        said = said.replace(f"{{{name}}}", value) if isinstance(value, str) else said
    return said
