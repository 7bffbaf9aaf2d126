"""What the book is, what must lie ready, and every stage's numbers, as the page shows them."""

from __future__ import annotations

from types import SimpleNamespace
from typing import Any

from markupsafe import Markup

from foredge.contract import Build
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.told import as_html, told
from foredge.emit.html.work import page_piece
from foredge.emit.materials import cut_from, pieces_by_stock
from foredge.emit.numbers import stage_numbers
from foredge.emit.overview import glance_rows


def glance_lines(build: Build, numbers: Numbers) -> list[tuple[str, Markup]]:
    """Label and value of what the book is."""
    return [
        (label, as_html(said) if isinstance(said, str) else numbers.text(said))
        for label, said in glance_rows(build)
    ]


def cut_groups(build: Build, numbers: Numbers) -> list[SimpleNamespace]:
    """The pieces by what they are cut from."""
    groups: list[SimpleNamespace] = told(build, cut_from)
    for group, pieces in zip(groups, pieces_by_stock(build), strict=True):
        group.rows = [page_piece(build, numbers, piece) for piece in pieces]
    return groups


def stage_tables(build: Build, numbers: Numbers) -> list[Any]:
    """The quantities of each stage that has work to do."""
    tables = []
    for stage, result in build.stages:
        if not (result.quantities and result.operations):
            continue
        table = told(build, _of(stage.title, result))
        for row, quantity in zip(table.rows, result.quantities, strict=True):
            row.value = numbers.ranged(quantity)
        tables.append(table)
    return tables


def _of(title: str, result: Any) -> Any:
    return lambda build: stage_numbers(build, title, result)
