"""A recorded computation as the formula a person would write.

Unnamed steps are written out in place, down to the next quantity that has a name; the
recording itself is read, so a formula cannot drift from what was computed. Nothing here
recurses, and a step whose words grow too long gets a number of its own, so a formula is
never longer than the recording.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable
from dataclasses import dataclass

from foredge.display import show
from foredge.quantity import Origin, Quantity, leaf

LONGEST = 110
"""A step with more characters than this is told apart, under a number."""

MOST_TERMS = 8
"""A sum of more different terms than this is told as a list."""

_WRAPPERS = ("given", "same", "gate", "round", "round-up", "ceil", "floor")
"""They add little to the words of their argument, which may then be longer."""

_PHRASE, _SUM, _PRODUCT, _UNARY, _ATOM = range(5)
"""How tightly words hold together; a looser part gets brackets."""


@dataclass(frozen=True, slots=True)
class Step:
    """An unnamed part of a formula that is told apart: ``mark = text``."""

    mark: str
    text: str
    quantity: Quantity


@dataclass(frozen=True, slots=True)
class Formula:
    """``text`` of one quantity; what it is computed from, and what decided how.

    ``terms`` says how ``text`` calls each of ``inputs`` (by ``id``); constants are written as
    numbers and are not inputs.
    """

    text: str
    inputs: tuple[Quantity, ...]
    deciders: tuple[Quantity, ...]
    steps: tuple[Step, ...]
    terms: dict[int, str]


@dataclass(frozen=True, slots=True)
class _Words:
    text: str
    hold: int = _ATOM

    def inside(self, hold: int) -> str:
        """The words as a part of something that holds this tightly."""
        return f"({self.text})" if self.hold < hold else self.text


def ends_formula(node: Quantity) -> bool:
    """Whether a formula stops at ``node``: it has a name, enters from outside, or is a gate."""
    return node.name is not None or node.op in ("leaf", "gate")


def is_constant(node: Quantity) -> bool:
    """Whether it is a plain number of a rule, written as such."""
    return node.op == "leaf" and node.origin is not None and node.origin.kind == "constant"


def formula(root: Quantity, system: str = "metric") -> Formula:
    """How ``root`` was computed; ``text`` is empty for what came from outside."""
    order, controls = _unnamed(root)
    ends = _ends(root)
    deciders = [node for node in _behind(controls) if all(node is not end for end in ends)]
    terms = _terms([*ends, *deciders])
    words: dict[int, _Words] = {}
    steps: list[Step] = []
    for node in order:
        if node.op == "leaf":
            continue
        longest = 3 * LONGEST if node.op in _WRAPPERS else LONGEST
        for arg in node.args:
            if id(arg) in words and len(words[id(arg)].text) > longest:
                steps.append(Step(f"[{len(steps) + 1}]", words[id(arg)].text, arg))
                words[id(arg)] = _Words(steps[-1].mark)
        parts = [words.get(id(arg)) or _end_words(arg, terms, system) for arg in node.args]
        words[id(node)] = _say(node, parts, system)
    text = words[id(root)].text if root.op != "leaf" else ""
    return Formula(text, tuple(ends), tuple(deciders), tuple(steps), terms)


def _inner(node: Quantity) -> tuple[Quantity, ...]:
    """The arguments a formula names, in the order in which it names them."""
    if node.op == "gate":
        return node.args[::-1]
    return node.args[:1] if node.op == "given" else node.args


def _unnamed(root: Quantity) -> tuple[list[Quantity], list[Quantity]]:
    """``root`` and the unnamed steps under it, arguments first; and what controlled them."""
    order: list[Quantity] = []
    controls: list[Quantity] = []
    placed: set[int] = set()
    stack = [(root, False)]
    while stack:
        node, ready = stack.pop()
        if id(node) in placed:
            continue
        if ready:
            placed.add(id(node))
            order.append(node)
            if node.op == "given":
                controls.extend(node.args[1:])
            continue
        stack.append((node, True))
        stack.extend((arg, False) for arg in reversed(_inner(node)) if not ends_formula(arg))
    return order, controls


def _ends(root: Quantity) -> list[Quantity]:
    """The named inputs of ``root``, in the order in which its formula names them."""
    found: dict[int, Quantity] = {}
    seen: set[int] = set()
    stack = list(reversed(_inner(root)))
    while stack:
        node = stack.pop()
        if id(node) in seen or is_constant(node):
            continue
        seen.add(id(node))
        if ends_formula(node):
            found[id(node)] = node
        else:
            stack.extend(reversed(_inner(node)))
    return list(found.values())


def _behind(nodes: list[Quantity]) -> list[Quantity]:
    """The named quantities that ``nodes`` are, or are made of."""
    found: dict[int, Quantity] = {}
    seen: set[int] = set()
    queue = list(nodes)
    while queue:
        node = queue.pop(0)
        if id(node) in seen or is_constant(node):
            continue
        seen.add(id(node))
        if ends_formula(node):
            found[id(node)] = node
        else:
            queue.extend(node.args)
    return list(found.values())


def label_of(node: Quantity) -> str:
    """What a quantity is called in words."""
    if node.op == "gate" and node.name is None:
        return str(node.data.label)
    if node.op == "leaf" and node.origin is not None and node.origin.kind == "reading":
        return "reading"
    return node.label or node.name or node.op


def _terms(nodes: list[Quantity]) -> dict[int, str]:
    labels = Counter(label_of(node) for node in nodes)
    return {
        id(node): _term(label_of(node)) if labels[label_of(node)] == 1 else node.name or "?"
        for node in nodes
    }


def _term(label: str) -> str:
    """A label as a part of a formula: small letter first, in quotes where it could mislead."""
    words = label[0].lower() + label[1:] if label[1:2].islower() else label
    return f"'{words}'" if re.search(r"[,()×÷=]| [-+x] ", words) else words


def _end_words(node: Quantity, terms: dict[int, str], system: str) -> _Words:
    term = terms.get(id(node))
    return _Words(show(node, system) if term is None else term)


def _say(node: Quantity, parts: list[_Words], system: str) -> _Words:
    if node.op in ("round", "round-up"):
        how = "to the nearest" if node.op == "round" else "up to the next"
        return _Words(f"{parts[0].inside(_SUM)}, {how} {_step(node, system)}", _PHRASE)
    if node.op == "blank":
        high, allowance = (part.inside(_SUM) for part in parts)
        step = _step(node, system)
        return _Words(f"high end of {high} + {allowance}, up to the next {step}", _PHRASE)
    if node.op == "opaque":
        name = getattr(node.data, "__name__", "computed").strip("_").replace("_", " ")
        return _Words(f"{name} of ({', '.join(part.text for part in parts)})", _UNARY)
    return _SAY[node.op](node, parts)


def _step(node: Quantity, system: str) -> str:
    step = leaf(float(node.data), node.dimension, "step", Origin("constant"))
    return show(step, "metric" if system == "both" else system)


def _add(node: Quantity, parts: list[_Words]) -> _Words:
    parts = [part for part in parts if not _NOTHING.fullmatch(part.text)] or parts[:1]
    if len(parts) == 1:
        return parts[0]
    counted = Counter(part.inside(_SUM) for part in parts)
    terms = [text if times == 1 else f"{times} × {text}" for text, times in counted.items()]
    if len(terms) > MOST_TERMS:
        return _Words(f"the sum of these {len(terms)}: {', '.join(terms)}", _PHRASE)
    return _Words(" + ".join(terms), _SUM)


def _gate(node: Quantity, parts: list[_Words]) -> _Words:
    if node.data.read:
        return _Words(f"{parts[1].text}, instead of the estimate {parts[0].inside(_SUM)}", _PHRASE)
    return _Words(parts[0].text, parts[0].hold)


def _choose(node: Quantity, parts: list[_Words]) -> _Words:
    a, b, then, otherwise = (part.inside(_SUM) for part in parts)
    return _Words(f"{then} where {a} is greater than {b}, else {otherwise}", _PHRASE)


def _called(name: str) -> Callable[[Quantity, list[_Words]], _Words]:
    return lambda node, parts: _Words(f"{name}({', '.join(part.text for part in parts)})", _ATOM)


_NOTHING = re.compile(r"0( [^ ]+)?")
"""What may be left out of a sum: ``0``, ``0 mm``."""


def _subtract(node: Quantity, parts: list[_Words]) -> _Words:
    if _NOTHING.fullmatch(parts[1].text):
        return parts[0]
    # The right side must hold tighter: a - (b - c).
    return _Words(f"{parts[0].inside(_SUM)} - {parts[1].inside(_PRODUCT)}", _SUM)


def _multiply(node: Quantity, parts: list[_Words]) -> _Words:
    left, right = parts
    if left.text == "1" or right.text == "1":
        return right if left.text == "1" else left
    return _Words(f"{left.inside(_PRODUCT)} × {right.inside(_PRODUCT)}", _PRODUCT)


def _divide(node: Quantity, parts: list[_Words]) -> _Words:
    if parts[1].text == "1":
        return parts[0]
    return _Words(f"{parts[0].inside(_PRODUCT)} ÷ {parts[1].inside(_UNARY)}", _PRODUCT)


_SAY: dict[str, Callable[[Quantity, list[_Words]], _Words]] = {
    "add": _add,
    "subtract": _subtract,
    "multiply": _multiply,
    "divide": _divide,
    "negate": lambda node, parts: _Words(f"-{parts[0].inside(_UNARY)}", _UNARY),
    "root": lambda node, parts: _Words(f"√{parts[0].inside(_ATOM)}", _UNARY),
    "maximum": _called("max"),
    "minimum": _called("min"),
    "ceil": lambda node, parts: _Words(f"{parts[0].inside(_SUM)}, rounded up to whole", _PHRASE),
    "floor": lambda node, parts: _Words(f"{parts[0].inside(_SUM)}, rounded down to whole", _PHRASE),
    "choose": _choose,
    "same": lambda node, parts: parts[0],
    "given": lambda node, parts: parts[0],
    "gate": _gate,
}
