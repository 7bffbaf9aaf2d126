"""Time and money, as a section of the page."""

from __future__ import annotations

from collections.abc import Iterator

from markupsafe import Markup

from foredge.contract import Build
from foredge.emit.html.plan import Block, Section, linked
from foredge.emit.html.told import told
from foredge.emit.money import cost_view

_PRICES = "The wage and the prices are those of the spec; what a book fetches, nobody can compute."


def money_section(build: Build) -> Iterator[Section]:
    """Hands-on time, priced materials, sums; nothing where nothing is priced."""
    view = told(build, cost_view)
    if view is None:
        return
    several = view.copies > 1
    whole = f"all {view.copies} copies"
    hours = [(row.title, row.one, *((row.all,) if several else ())) for row in view.hours]
    heads = ["hands-on", "one book made alone", whole] if several else ["hands-on", "one book"]
    batch = Markup("Done once for all copies: steps {}.").format(linked(build, view.batch))
    blocks = [
        Block("Hands-on time", heads=heads, rows=hours),
        Block(words=(batch,) if several and view.batch else ()),
    ]
    if view.materials:
        heads = ["material", "need", "by the share used", "whole units, from nothing"]
        heads += ["to be bought now", "how"]
        rows = [
            (row.material, row.need, row.used, row.afresh, row.now, row.how)
            for row in view.materials
        ]
        blocks.append(Block("Materials", heads=heads, rows=rows))
    if view.unpriced:
        said = "No price is given, and nothing is counted, for: {}."
        blocks.append(Block(words=(Markup(said).format(view.unpriced),)))
    heads = ["money", whole, "each", "how"] if several else ["money", "the book", "how"]
    sums = [(row.label, row.all, *((row.each,) if several else ()), row.how) for row in view.sums]
    words = [view.earned, _PRICES] if view.earned else [_PRICES]
    blocks += [Block("Sums", heads=heads, rows=sums), Block(words=words)]
    yield Section("money", "Time and money", blocks)
