"""How a number was made: the tree behind ``foredge explain``.

Everything printed is read from the recorded computation: the formula, each input, where it
comes from, and which part of the 95 % range it causes. A quantity's own derivation is
printed once, where it is first met.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from foredge.contract import Build
from foredge.display import show
from foredge.estimates import estimate_text, is_estimate, off_by
from foredge.formula import Formula, formula
from foredge.quantity import Band, Program, Quantity
from foredge.whence import whence

INDENT = "  "


def explain(build: Build, name: str) -> str:
    """The derivation of the quantity ``name``, down to spec lines and published figures.

    ``name`` is any of :func:`known`; raises KeyError otherwise (see :func:`near`).
    """
    return "\n".join(_Tree(build, known(build)[name]).lines(name))


def listing(build: Build) -> str:
    """Every quantity of the build, aligned: name, value with its range, firm or provisional."""
    system = build.book.display
    rows = [
        (one.name or "", show(one, system, build.band(one)), _state(one, build.band(one)))
        for one in (*build.whole.quantities, *build.plan.ledger.quantities)
    ]
    return "\n".join(_aligned(rows)) if rows else ""


def near(build: Build, name: str) -> tuple[str, ...]:
    """Names that look like ``name``, best first: whole names, then last parts."""
    names = known(build)
    close = get_close_matches(name, names, n=3, cutoff=0.6)
    tail = name.rpartition(".")[2]
    ends = [one for one in names if one.rpartition(".")[2] == tail]
    return tuple(dict.fromkeys([*close, *sorted(ends)]))[:3]


def known(build: Build) -> dict[str, Quantity]:
    """Everything that can be explained: quantities, what lies behind them, sizes of pieces."""
    sizes = {
        f"{piece.name}.{side}": size
        for piece in build.whole.pieces
        for side, size in (("width", piece.width), ("height", piece.height))
    }
    named = (*build.whole.quantities, *build.plan.ledger.quantities)
    roots = [*named, *sizes.values()]
    found = {quantity.name or "": quantity for quantity in named}
    for node in Program(roots).nodes:
        if node.name is not None:
            found.setdefault(node.name, node)
    return {**sizes, **found}


def _state(quantity: Quantity, band: Band) -> str:
    if quantity.op == "blank":
        return "blank: cut now, trimmed after"
    if quantity.firm:
        return "estimate" if is_estimate(quantity, band) else "firm"
    return f"provisional: rests on {_and(quantity.gates)}, not yet measured"


def _and(words: Iterable[str]) -> str:
    ordered = sorted(words)
    head = ", ".join(ordered[:-1])
    return f"{head} and {ordered[-1]}" if head else ordered[-1]


def _aligned(rows: Iterable[tuple[str, ...]]) -> list[str]:
    """Rows with their columns padded to one width; nothing after the last word."""
    table = list(rows)
    widths = [max(map(len, column)) for column in zip(*table, strict=True)]
    return [
        "   ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        for row in table
    ]


@dataclass(frozen=True, slots=True)
class _Visit:
    """A quantity still to be told, as a child line (``line``) and with what is under it."""

    quantity: Quantity
    depth: int
    line: str


class _Tree:
    """Prints one derivation; holds what has been told already."""

    def __init__(self, build: Build, root: Quantity) -> None:
        self._build = build
        self._root = root
        self._system = build.book.display
        self._program = Program([root])
        nodes = self._program.nodes
        self._bands = dict(zip(map(id, nodes), self._program.bands(nodes), strict=True))
        self._shares = {id(leaf): share for leaf, share in self._band(root).shares}
        self._told: set[int] = set()

    def lines(self, name: str) -> list[str]:
        """The whole tree under ``name``. A stack, no recursion: derivations may be deep."""
        head = f"{name}   {self._value(self._root)}   {_state(self._root, self._band(self._root))}"
        out: list[str] = []
        stack = [_Visit(self._root, 0, head)]
        while stack:
            visit = stack.pop()
            again = id(visit.quantity) in self._told and visit.quantity.op != "leaf"
            out.append(visit.line + ("   (explained above)" if again else ""))
            if again:
                continue
            self._told.add(id(visit.quantity))
            stack.extend(reversed(self._under(visit, out)))
        return out

    def _under(self, visit: _Visit, out: list[str]) -> list[_Visit]:
        """Print the formula of ``visit`` and its reasons; returns its inputs, to be told next."""
        pad = INDENT * (visit.depth + 1)
        quantity = visit.quantity
        if quantity.op == "leaf":
            if visit.depth == 0:
                out.append(f"{pad}{whence(self._build, quantity)}")
            return []
        made = formula(quantity, self._system)
        out.append(f"{pad}= {made.text}")
        out += [f"{pad}  {step.mark} = {step.text}" for step in made.steps]
        out += [f"{pad}{line}" for line in self._reasons(quantity, made)]
        children = (*made.inputs, *made.deciders)
        rows = [self._row(child, made) for child in children]
        lines = _aligned(rows) if rows else []
        inner = INDENT * (visit.depth + 2)
        return [
            _Visit(child, visit.depth + 2, inner + line)
            for child, line in zip(children, lines, strict=True)
        ]

    def _reasons(self, quantity: Quantity, made: Formula) -> list[str]:
        lines = []
        if quantity.rule:
            lines.append(f"why: {quantity.rule}")
        if quantity.source:
            lines.append(f"source: {quantity.source}")
        if made.deciders:
            names = ", ".join(made.terms[id(node)] for node in made.deciders)
            lines.append(f"decided by: {names}")
        if quantity.op == "gate":
            lines.append(self._gate(quantity))
        return lines

    def _gate(self, quantity: Quantity) -> str:
        gate = quantity.data
        if gate.read:
            estimate = estimate_text(quantity, self._system)
            off = off_by(quantity, self._system)
            return f"{gate.gate}: {gate.label} measured, {off}, which was {estimate}"
        return f"{gate.gate}: measure the {gate.label}; it goes under measured: as {gate.key}"

    def _row(self, child: Quantity, made: Formula) -> tuple[str, str, str, str]:
        share = self._shares.get(id(child))
        told = f"{100 * share:.0f} % of the band" if share is not None else ""
        if share is not None and share < 0.005:
            told = "under 1 % of the band"
        return made.terms[id(child)], self._value(child), whence(self._build, child), told

    def _value(self, quantity: Quantity) -> str:
        return show(quantity, self._system, self._band(quantity))

    def _band(self, quantity: Quantity) -> Band:
        return self._bands[id(quantity)]
