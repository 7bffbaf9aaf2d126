"""The plan of a relief with its contour lines, and two sections through its highest part."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from foredge.contract import (
    Contour,
    Drawing,
    Hatch,
    Item,
    Label,
    Line,
    Measured,
    Panel,
    Point,
    Rings,
    Section,
    Shape,
    Shaped,
    level_cuts,
    outline_of,
    settle,
    shortened,
    show_length,
    upright_cut,
    words_of,
)
from foredge_stages.sculpt.reading import Relief
from foredge_stages.sculpt.sheets import LEFT, TOP, axes, board, moved

STEPS_MM = (1.0, 2.0, 3.0, 5.0, 10.0, 20.0)
MOST_LINES = 8
MOST_NAMES = 40
CROWDED_MM = 5.0
NAME_MM = 3.0
LEADER_MM = 5.0


def plan(relief: Relief) -> Drawing:
    """Seen from above, at full size: outline, contours every few millimetres, part names."""
    panel, step = relief.panel, contour_step(relief)
    top = relief.report.height.value
    heights = [step * place for place in range(1, math.ceil(top / step))]
    cuts = level_cuts(relief.shapes, relief.skin, heights) if heights else ()
    x, y = summit(relief)
    items: list[Item] = [*board(panel)]
    items += [Line(ring, "cut", closed=True) for ring in moved(relief.report.footprint)]
    items += _section_marks(panel, x, y)
    items += [
        *axes(panel),
        Measured(
            (LEFT, TOP),
            (LEFT + panel.width.value, TOP),
            show_length(panel.width, relief.book.display),
            10.0,
        ),
        Measured(
            (LEFT + panel.width.value, TOP),
            (LEFT + panel.width.value, TOP + panel.height.value),
            show_length(panel.height, relief.book.display),
            10.0,
        ),
    ]
    wide, high = panel.width.value + 2 * LEFT, panel.height.value + 2 * TOP
    items += _names(relief, words_of(items), wide, high)
    items += _contours(cuts, words_of(items), wide, high)
    return Drawing(
        f"sculpt-{relief.on}-plan",
        f"Relief on the {relief.where}: outline, and a contour line every {step:g} mm of height",
        wide,
        high,
        tuple(items),
        true_scale=True,
        sizes=(relief.panel.width, relief.panel.height),
    )


def contour_step(relief: Relief) -> float:
    """Height from contour to contour: the spec's, else the least that gives few lines."""
    said = relief.options.contour
    top = relief.report.height.value
    if said is not None:
        return float(max(said.value, top / 40))
    return next((step for step in STEPS_MM if top / step <= MOST_LINES), top / MOST_LINES)


def summit(relief: Relief) -> Point:
    """The middle of its highest part: of a hoop, where nothing is."""
    top = relief.report.height.value
    rings = [r for cut in level_cuts(relief.shapes, relief.skin, [top * 0.995]) for r in cut.rings]
    if not rings:
        return relief.panel.width.value / 2, relief.panel.height.value / 2
    left, head, right, tail = _box(max(rings, key=_size))
    return (left + right) / 2, (head + tail) / 2


def _box(*rings: tuple[Point, ...]) -> tuple[float, float, float, float]:
    xs, ys = [x for ring in rings for x, _ in ring], [y for ring in rings for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)


def _size(ring: tuple[Point, ...]) -> float:
    left, head, right, tail = _box(ring)
    return round((right - left) * (tail - head), 6)


def _contours(
    cuts: Sequence[Contour], taken: Sequence[Label], width: float, height: float
) -> list[Item]:
    """The lines, and their heights where there is room for the number."""
    items: list[Item] = []
    written: list[Label] = []
    for cut in reversed(cuts):
        items += [Line(ring, "dimension", closed=True) for ring in moved(cut.rings)]
        if not cut.rings:
            continue
        widest = max(cut.rings, key=_size)
        x, y = max(widest, key=lambda point: (round(point[0], 3), round(point[1], 3)))
        label = Label((LEFT + x + 0.4, TOP + y + 0.7), f"{cut.height_mm:g}", 2.2)
        near = any(math.dist(label.at, other.at) <= CROWDED_MM for other in written)
        if not near and settle((label,), (*taken, *written), width, height):
            written.append(label)
    return [*items, *written]


def _section_marks(panel: Panel, x: float, y: float) -> list[Item]:
    right, foot = LEFT + panel.width.value, TOP + panel.height.value
    return [
        Line(((LEFT - 3, TOP + y), (right + 15, TOP + y)), "hidden"),
        Label((right + 16, TOP + y + 1.2), "A", 4.0),
        Line(((LEFT + x, TOP - 3), (LEFT + x, foot + 3)), "hidden"),
        Label((LEFT + x, foot + 7), "B", 4.0, anchor="middle"),
    ]


def _names(relief: Relief, taken: Sequence[Label], width: float, height: float) -> list[Item]:
    """What every part is called, beside its outline where there is room; else with a line to it."""
    found: list[Label] = []
    lines: list[Line] = []
    for one in relief.shaped[:MOST_NAMES]:
        rings = outline_of(one.shape, relief.skin)
        if not rings:
            continue
        box = _box(*rings)
        label = settle(_places(one, box, width), (*taken, *found), width, height)
        if label is None:
            continue
        found.append(label)
        left, head, right, tail = box
        off = max(TOP + head - label.at[1], label.at[1] - TOP - tail)
        if off > LEADER_MM:
            middle = LEFT + (left + right) / 2
            near = TOP + (head if label.at[1] < TOP + head else tail)
            lines.append(Line((label.at, (middle, near)), "guide"))
    return [*lines, *found]


def _places(one: Shaped, box: tuple[float, float, float, float], width: float) -> Iterator[Label]:
    """Just above its outline, just below, at its sides; then further and further off."""
    left, head, right, tail = box
    middle = LEFT + (left + right) / 2
    for off in (0.0, 4.0, 8.0, 12.0, 16.0):
        high, low = TOP + head - 1.2 - off, TOP + tail + 3.4 + off
        side = TOP + (head + tail) / 2 + 1.0 + off
        for label in (
            Label((middle + 2, high), one.name, NAME_MM),
            Label((middle - 2, high), one.name, NAME_MM, anchor="end"),
            Label((middle + 2, low), one.name, NAME_MM),
            Label((middle - 2, low), one.name, NAME_MM, anchor="end"),
            Label((LEFT + right + 1.5, side), one.name, NAME_MM),
            Label((LEFT + left - 1.5, side), one.name, NAME_MM, anchor="end"),
        ):
            # A long name is cut short only where its part stands near the page's side.
            room = width - label.at[0] if label.anchor == "start" else label.at[0]
            yield shortened(label, max(room - 1.0, 0.45 * width))


def sections(relief: Relief) -> Drawing:
    """Across (A) and from head to tail (B), through the middle of the highest part, to scale."""
    panel, display = relief.panel, relief.book.display
    x, y = summit(relief)
    wide, high = panel.width.value, panel.height.value
    across = upright_cut(relief.shapes, relief.skin, (0.0, y), (wide, y))
    along = upright_cut(relief.shapes, relief.skin, (x, 0.0), (x, high))
    top = relief.report.height.value
    first, second = TOP + top, TOP + 2 * top + 34
    thick = relief.upstream.quantity("case.board.thickness").value
    items: list[Item] = [
        *_section(
            across, first, thick, f"A: across, {show_length(round(y), display)} below the head"
        ),
        *_section(
            along,
            second,
            thick,
            f"B: from head to tail, {show_length(round(x), display)} from the edge",
        ),
        Measured(
            (LEFT, first),
            (LEFT, first - top),
            show_length(relief.report.height, relief.book.display),
            8.0,
        ),
    ]
    return Drawing(
        f"sculpt-{relief.on}-sections",
        f"Sections of the relief on the {relief.where}: core hatched, clay grey, insets dark",
        max(wide, high) + 2 * LEFT,
        second + thick + 20,
        tuple(items),
        true_scale=True,
        sizes=(panel.width, panel.height, relief.upstream.quantity("case.board.thickness")),
    )


def _section(cut: Section, ground: float, thick: float, title: str) -> list[Item]:
    left, right = LEFT, LEFT + cut.length_mm
    items: list[Item] = [
        Line(((left, ground), (right, ground), (right, ground + thick), (left, ground + thick)),
             closed=True),
        Label((left, ground + thick + 6), title, 4.0),
    ]  # fmt: skip
    for body, rings in cut.bodies:
        placed = _upright(rings, ground)
        if not placed:
            continue
        if body == "core":
            items.append(Hatch(placed, 1.5))
            continue
        items.append(Shape(placed, shade=0.25 if body == "clay" else 0.6))
        items += [Line(ring, closed=True) for ring in placed]
    return items


def _upright(rings: Rings, ground: float) -> Rings:
    """Height goes up on the sheet."""
    return tuple(tuple((LEFT + x, ground - height) for x, height in ring) for ring in rings)
