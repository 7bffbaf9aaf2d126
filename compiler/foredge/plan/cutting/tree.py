"""Panels and cuts while the search runs: sizes only, no positions.

A sheet in work (:class:`Bin`) is a set of panels; a panel is free, holds an item, or is cut along
one axis into kids whose sizes add up to its own. The order of kids does not matter yet, so all
free kids of a panel are kept as one. Sizes are whole numbers stored as floats: exact below 2**53,
and faster in products than large ints.
"""

from __future__ import annotations

FREE = -1
CUT = -2


class Bin:
    """One sheet in work. ``stock`` and ``way`` name the sheet size and its way of pre-cutting."""

    __slots__ = ("fill", "mask", "parts", "room", "roots", "stock", "way")

    def __init__(self, stock: int, way: int) -> None:
        self.stock = stock
        self.way = way
        self.roots: list[Node] = []
        self.fill = 0.0
        self.mask = 0
        self.room = 0.0  # what the search thinks the free panels are worth
        self.parts: list[tuple[Node, int]] | None = None


class Node:
    """A panel. ``item``: index, FREE or CUT. ``axis`` 0: kids side by side; 1: stacked."""

    __slots__ = ("axis", "h", "home", "item", "kids", "up", "w")

    def __init__(self, w: float, h: float, item: int, up: Node | None, home: Bin) -> None:
        self.w = w
        self.h = h
        self.item = item
        self.axis = 0
        self.kids: list[Node] = []
        self.up = up
        self.home = home


def fresh(stock: int, way: int, panels: list[tuple[float, float]], leaves: list[Node]) -> Bin:
    """An empty sheet; its free panels are added to ``leaves``."""
    bin_ = Bin(stock, way)
    bin_.roots = [Node(w, h, FREE, None, bin_) for w, h in panels]
    leaves.extend(bin_.roots)
    return bin_


def nodes_of(bin_: Bin) -> list[Node]:
    """Every panel of the sheet that is not free, each before its kids."""
    found: list[Node] = []
    stack = [root for root in bin_.roots if root.item != FREE]
    while stack:
        node = stack.pop()
        found.append(node)
        if node.item == CUT:
            stack.extend(kid for kid in node.kids if kid.item != FREE)
    return found


def parts_of(bin_: Bin) -> list[tuple[Node, int]]:
    """Like ``nodes_of``, with the number of items on each; for sheets that change no more."""
    if bin_.parts is None:
        bin_.parts = []
        for root in bin_.roots:
            if root.item != FREE:
                _count(root, bin_.parts)
    return bin_.parts


def _count(node: Node, found: list[tuple[Node, int]]) -> int:
    if node.item != CUT:
        found.append((node, 1))
        return 1
    number = 0
    for kid in node.kids:
        if kid.item != FREE:
            number += _count(kid, found)
    found.append((node, number))
    return number


def all_nodes(bin_: Bin) -> list[Node]:
    """Every panel of the sheet, free ones too."""
    found: list[Node] = []
    stack = list(bin_.roots)
    while stack:
        node = stack.pop()
        found.append(node)
        stack.extend(node.kids)
    return found


def items_of(node: Node) -> list[int]:
    """The items on a panel."""
    found: list[int] = []
    stack = [node]
    while stack:
        node = stack.pop()
        if node.item == CUT:
            stack.extend(node.kids)
        elif node.item != FREE:
            found.append(node.item)
    return found


def bin_items(bin_: Bin) -> list[int]:
    """The items on a sheet."""
    return [item for root in bin_.roots for item in items_of(root)]


def copy_without(
    bin_: Bin, dropped: set[Node], leaves: list[Node], removed: list[int], area: list[float]
) -> Bin:
    """A copy of the sheet with the ``dropped`` panels made free.

    Free panels of the copy are added to ``leaves``, the items taken out to ``removed``.
    """
    twin = Bin(bin_.stock, bin_.way)
    before = len(removed)
    for root in bin_.roots:
        copy = _copy(root, None, twin, dropped, leaves, removed)
        twin.roots.append(copy)
        if copy.item == FREE:
            leaves.append(copy)
    twin.fill = bin_.fill
    twin.mask = bin_.mask
    for item in removed[before:]:
        twin.fill -= area[item]
        twin.mask ^= 1 << item
    return twin


def _copy(
    node: Node,
    up: Node | None,
    home: Bin,
    dropped: set[Node],
    leaves: list[Node],
    removed: list[int],
) -> Node:
    """A copy below ``up``; when it is free itself, the caller adds it to ``leaves``."""
    if node in dropped:
        removed.extend(items_of(node))
        return Node(node.w, node.h, FREE, up, home)
    copy = Node(node.w, node.h, node.item, up, home)
    if node.item != CUT:
        return copy
    axis = copy.axis = node.axis
    free = 0.0
    kept = copy.kids
    for kid in node.kids:
        if kid.item == FREE:
            free += kid.h if axis else kid.w
            continue
        twin = _copy(kid, copy, home, dropped, leaves, removed)
        if twin.item == FREE:
            free += twin.h if axis else twin.w
        else:
            kept.append(twin)
    if not kept:
        copy.item = FREE
    elif free:
        w, h = (node.w, free) if axis else (free, node.h)
        rest = Node(w, h, FREE, copy, home)
        kept.append(rest)
        leaves.append(rest)
    return copy


def place(
    leaf: Node, item: int, w: float, h: float, upright: bool, leaves: list[Node], index: int
) -> None:
    """Put ``item`` (w by h) into the free ``leaf`` = ``leaves[index]`` and keep ``leaves`` true.

    ``upright``: where two cuts are needed, the first runs from head to tail.
    """
    leaf.home.fill += w * h
    leaf.home.mask |= 1 << item
    if w == leaf.w:
        if h == leaf.h:
            leaf.item = item
            leaves[index] = leaves[-1]
            leaves.pop()
            return
        _cut_off(leaf, 1, h, leaves, index).item = item
    elif h == leaf.h:
        _cut_off(leaf, 0, w, leaves, index).item = item
    elif upright:
        strip = _cut_off(leaf, 0, w, leaves, index)
        leaves.append(strip)
        _cut_off(strip, 1, h, leaves, len(leaves) - 1).item = item
    else:
        strip = _cut_off(leaf, 1, h, leaves, index)
        leaves.append(strip)
        _cut_off(strip, 0, w, leaves, len(leaves) - 1).item = item


def _cut_off(leaf: Node, axis: int, size: float, leaves: list[Node], index: int) -> Node:
    """Cut a strip of ``size`` off a free leaf; return the strip, leave the rest in ``leaves``."""
    up = leaf.up
    if up is None or up.axis != axis:
        # The leaf becomes a cut panel: the strip and a new free rest are its kids.
        leaf.item = CUT
        leaf.axis = axis
        rest = Node(leaf.w, leaf.h, FREE, leaf, leaf.home)
        leaf.kids = [rest]
        leaves[index] = rest
        leaf, up = rest, leaf
    if axis:
        strip = Node(leaf.w, size, FREE, up, leaf.home)
        leaf.h -= size
    else:
        strip = Node(size, leaf.h, FREE, up, leaf.home)
        leaf.w -= size
    up.kids.append(strip)
    return strip
