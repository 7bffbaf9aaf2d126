"""The plan's sections of the page: shelf and shopping, cutting, evenings, water, money.

Each takes what the view function of the Markdown sheet gives, so that both say the same.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from types import SimpleNamespace

from markupsafe import Markup

from foredge.contract import Build
from foredge.emit.cutting import cut_views
from foredge.emit.cutting_aims import aim_lines
from foredge.emit.evenings import evening_views
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.pictures import Picture
from foredge.emit.html.told import as_html, as_text, each_system, told
from foredge.emit.html.work import anchor
from foredge.emit.moisture import MoistureRow, moisture_rows, moisture_view
from foredge.emit.shopping import ledger_rows, shopping
from foredge.emit.work import step_numbers

Words = Markup | str
Pictures = Mapping[str, Picture]
"""By the drawing's file name."""

_STEP = re.compile(r"(?<![\d.:])\d+\.\d+(?!\.?\d|\s*mm)")


@dataclass(frozen=True, slots=True)
class Block:
    """A piece of a section: words, a list, a table, pictures, a list below; all may be empty."""

    title: Words = ""
    words: Sequence[Words] = ()
    items: Sequence[Words] = ()
    heads: Sequence[str] = ()
    rows: Sequence[Sequence[Words]] = ()
    pictures: Sequence[Picture] = ()
    below: Sequence[Words] = ()


@dataclass(frozen=True, slots=True)
class Section:
    """A section of the page; ``anchor`` is its id."""

    anchor: str
    title: str
    blocks: Sequence[Block]


def before_work(build: Build, numbers: Numbers, pictures: Pictures) -> Iterator[Section]:
    """What is read before the work: shelf and shopping, the cutting plan, the evenings."""
    yield from _shelf(build, numbers)
    yield from _cutting(build, pictures)
    yield from _evenings(build, pictures)


def after_work(build: Build, numbers: Numbers) -> Iterator[Section]:
    """What is looked up: water and balance; :mod:`foredge.emit.html.money` has the rest."""
    view = told(build, moisture_view)
    if not view.rows:
        return
    rows = [
        _wetting(build, numbers, row, views)
        for row, *views in zip(view.rows, *each_system(build, moisture_rows), strict=True)
    ]
    pulls = [Markup("Pull, {}").format(line) for line in view.balance]
    note = (
        "One sheet of paper pasted over a board pulls 1; a board bows towards the side that "
        "pulls more. The weights are from memory."
    )
    heads = ("step", "what", "side", "water", "dry after")
    lines = [linked(build, line) for line in view.ready]
    blocks = [
        Block(heads=heads, rows=rows),
        Block(items=[*lines, *pulls]),
        Block(words=(note,) if pulls else ()),
    ]
    yield Section("water", "Water and balance", blocks)


def _wetting(
    build: Build, numbers: Numbers, row: SimpleNamespace, views: list[MoistureRow]
) -> list[Words]:
    water, dry = row.water, [view.dry for view in views]
    if row.mass is not None:
        amounts = [view.water for view in views]
        water = numbers.written(row.mass, amounts, f"water, {as_text(views[0].what)}")
    wait = numbers.written(row.wait, dry, f"drying, {as_text(views[0].what)}")
    return [linked(build, row.steps), row.what, row.side, water, wait]


def linked(build: Build, words: Words) -> Markup:
    """``words`` with the numbers of steps made links to them."""
    known = set(step_numbers(build).values())

    def link(match: re.Match[str]) -> str:
        number = match[0]
        if number not in known:
            return number
        return f'<a href="#{anchor(number)}">{number}</a>'

    # Only text is touched: what stands in a tag is left as it is.
    parts = re.split(r"(<[^>]*>)", str(Markup.escape(words)))
    parts[::2] = [_STEP.sub(link, part) for part in parts[::2]]
    return Markup("".join(parts))


def _shelf(build: Build, numbers: Numbers) -> Iterator[Section]:
    rows = told(build, ledger_rows)
    if not rows:
        return
    lines = []
    for row, *views in zip(rows, *each_system(build, ledger_rows), strict=True):
        amount = numbers.written(row.whole, [view.need for view in views])
        steps = linked(build, row.steps)
        lines.append((row.material, amount, row.state, row.shelf, row.missing, steps, row.note))
    heads = ("material", "need", "state", "on the shelf", "missing", "steps", "note")
    words = ["What is missing is counted at the high end of the range."]
    if build.book.copies.value > 1:
        count = numbers.number(build.book.copies)
        said = "Amounts here are those of all {} copies; the steps tell those of one book."
        words.insert(0, Markup(said).format(count))
    need_block = Block("Shelf and need", words, heads=heads, rows=lines)
    yield Section("shelf", "Shelf and shopping", [need_block, *_shopping(build, numbers)])


def _shopping(build: Build, numbers: Numbers) -> Iterator[Block]:
    view = told(build, shopping)
    if not view.rows:
        return
    words = ["What is not listed on the shelf stands here too, whether you have it or not."]
    if view.estimated:
        words.insert(0, "Amounts are the high ends of their ranges.")
    if view.found:
        said = "Pieces are also cut from: {}; their sizes stand above."
        words.append(Markup(said).format(view.found))
    heads = ("what", "amount", "buy", "price", "why", "first used")
    rows = []
    listed = [one.rows for one in each_system(build, shopping)]
    for row, *views in zip(view.rows, *listed, strict=True):
        amount = row.need
        if row.whole is not None:
            amount = numbers.written(row.whole, [one.need for one in views])
        step = linked(build, row.step)
        rows.append((row.what, amount, row.buy, row.price, row.why, step))
    total = (Markup("Together, where a price is known: {}.").format(view.total),)
    yield Block("What must be bought", words, heads=heads, rows=rows)
    yield Block(words=total if view.total else ())


def _cutting(build: Build, pictures: Pictures) -> Iterator[Section]:
    sheets = told(build, cut_views)
    if not sheets:
        return
    words = (
        "Cuts go from edge to edge, and have the numbers of the picture; like ones stand in one "
        "line. What a cut gives is named, the rest is cut further.",
        "Each sheet lies as its width and height are given; measure from its left edge or "
        "its head.",
        "Off-cuts are kept under their letters; where one has room for a piece, it will do if "
        "the stuff suits.",
    )
    blocks = [_sheet(sheet, pictures) for sheet in sheets]
    aims = Block(words=words, items=told(build, aim_lines))
    yield Section("cutting", "Cutting plan", [aims, *blocks])


def _sheet(sheet: SimpleNamespace, pictures: Pictures) -> Block:
    words = [Markup("{}. Gives {}.").format(sheet.about, sheet.gives)]
    if sheet.state:
        words.append(Markup("<strong>{}.</strong>").format(sheet.state))
    if not sheet.lines:
        words.append(Markup("Nothing to cut: the whole sheet is the piece."))
    picture = pictures.get(f"{sheet.key}.svg")
    return Block(
        sheet.title,
        words,
        items=[Markup("<b>{}</b> {}").format(line.number, line.text) for line in sheet.lines],
        below=[Markup("Off-cut {}").format(left) for left in sheet.left],
        pictures=() if picture is None else (picture,),
    )


def _evenings(build: Build, pictures: Pictures) -> Iterator[Section]:
    view = told(build, evening_views)
    if view is None:
        return
    lines = [picture for name, picture in pictures.items() if name.startswith("schedule-timeline")]
    blocks = [Block(items=[linked(build, line) for line in view.summary], pictures=lines)]
    blocks += [_evening(build, evening) for evening in view.evenings]
    yield Section("evenings", "Session by session", blocks)


def _evening(build: Build, evening: SimpleNamespace) -> Block:
    if evening.idle:
        return Block(words=(Markup("{}: nothing to do.").format(evening.title),))
    resting = as_html("; ").join(linked(build, line) for line in evening.resting)
    return Block(
        evening.title,
        items=[linked(build, line) for line in evening.steps],
        below=(Markup("Left to itself: {}.").format(resting),) if evening.resting else (),
    )
