"""Time and money, as a section of the page."""

from __future__ import annotations

from collections.abc import Iterator
from types import SimpleNamespace

from markupsafe import Markup

from foredge.contract import Build
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.plan import Block, Section, Words, linked
from foredge.emit.html.told import as_text, each_system, told
from foredge.emit.money import cost_view

_PRICES = "The wage and the prices are those of the spec; what a book fetches, nobody can compute."


def money_section(build: Build, numbers: Numbers) -> Iterator[Section]:
    """Hands-on time, priced materials, sums; nothing where nothing is priced."""
    view = told(build, cost_view)
    if view is None:
        return
    several = view.copies > 1
    whole = f"all {view.copies} copies"
    hours = [_hours(numbers, row, several) for row in view.hours]
    heads = ["hands-on", "one book made alone", whole] if several else ["hands-on", "one book"]
    batch = Markup("Done once for all copies: steps {}.").format(linked(build, view.batch))
    blocks = [
        Block("Hands-on time", heads=heads, rows=hours),
        Block(words=(batch,) if several and view.batch else ()),
    ]
    if view.materials:
        heads = ["material", "need", "by the share used", "whole units, from nothing"]
        heads += ["to be bought now", "how"]
        rows = []
        views = (one.materials for one in each_system(build, cost_view))
        for row, *told_ in zip(view.materials, *views, strict=True):
            need = numbers.written(row.whole, [one.need for one in told_])
            rows.append((row.material, need, row.used, row.afresh, row.now, row.how))
        blocks.append(Block("Materials", heads=heads, rows=rows))
    if view.unpriced:
        said = "No price is given, and nothing is counted, for: {}."
        blocks.append(Block(words=(Markup(said).format(view.unpriced),)))
    heads = ["money", whole, "each", "how"] if several else ["money", "the book", "how"]
    sums = [(row.label, row.all, *((row.each,) if several else ()), row.how) for row in view.sums]
    words = [view.earned, _PRICES] if view.earned else [_PRICES]
    blocks += [Block("Sums", heads=heads, rows=sums), Block(words=words)]
    yield Section("money", "Time and money", blocks)


def _hours(numbers: Numbers, row: SimpleNamespace, several: bool) -> list[Words]:
    """What a stage is called, and its times, each with how it was added up."""
    if row.times is None:
        return [row.title, row.one, *((row.all,) if several else ())]
    name = as_text(row.title)
    one, whole = row.times
    cells = [row.title, numbers.written(one, [row.one] * 3, f"hands-on time, {name}")]
    if several:
        cells.append(numbers.written(whole, [row.all] * 3, f"hands-on time of all copies, {name}"))
    return cells
