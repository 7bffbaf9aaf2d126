"""An immutable node of a recorded computation.

Values are floats in canonical units: millimetres, grams, seconds and their products.
Comparing a quantity, or turning it into a ``bool``, ``float`` or ``int``, raises: each of
these would lose what the result rests on. Use :func:`choose`, :func:`maximum`,
:func:`ceil` and :func:`given`, which record.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any, NoReturn

from foredge.dimension import RATIO, Dimension
from foredge.problem import Path
from foredge.quantity.operators import EVALUATE

NO_GATES: frozenset[str] = frozenset()


class DimensionError(TypeError):
    """Two quantities of different dimensions were added, subtracted or compared."""


@dataclass(frozen=True, slots=True)
class Origin:
    """Where a leaf comes from.

    ``kind`` is ``spec`` (``path`` says where, ``text`` as written), ``reading`` (a gate's
    reading in the spec), ``table`` (a row of the reference tables), ``default`` or
    ``constant`` (a number in a rule). ``citation`` is the published source or its mark.
    """

    kind: str
    path: Path | None = None
    text: str = ""
    citation: str = ""


@dataclass(frozen=True, slots=True)
class Gated:
    """What a gate node knows: the gate, the key under ``measured:`` and its label."""

    gate: str
    key: str
    label: str
    read: bool


class Quantity:
    """One number of the book, with its dimension and how it was made.

    Attributes:
        value: in canonical units (mm, g, s).
        op: ``leaf``, ``blank`` or a name of ``operators.EVALUATE``.
        args: the quantities it was computed from.
        data: what the operation needs beside them (a rounding step, a function).
        name: stable dotted key such as ``case.board.width``; None while anonymous.
        label: what the sheet calls it; rule: why it is computed so; source: who says so.
        gates: gates not yet measured that it rests on.
        low, high: a leaf's 95 % range; equal to ``value`` when exact.
    """

    __slots__ = (
        "args",
        "data",
        "dimension",
        "gates",
        "high",
        "integer",
        "label",
        "low",
        "name",
        "op",
        "origin",
        "rule",
        "source",
        "value",
    )

    def __init__(
        self,
        op: str,
        value: float,
        dimension: Dimension,
        args: tuple[Quantity, ...] = (),
        *,
        data: Any = None,
        low: float | None = None,
        high: float | None = None,
        origin: Origin | None = None,
        gates: frozenset[str] | None = None,
        integer: bool = False,
    ) -> None:
        self.op = op
        self.value = value
        self.dimension = dimension
        self.args = args
        self.data = data
        self.low = value if low is None else low
        self.high = value if high is None else high
        self.origin = origin
        self.gates = _union(args) if gates is None else gates
        self.integer = integer
        self.name: str | None = None
        self.label = ""
        self.rule = ""
        self.source = ""

    def named(self, name: str, *, label: str = "", rule: str = "", source: str = "") -> Quantity:
        """The same computation under a stable dotted name.

        A leaf keeps its identity behind the new name, so that its error stays one error.
        """
        if self.op == "leaf" and self.name is not None:
            twin = Quantity("same", self.value, self.dimension, (self,), gates=self.gates)
        else:
            twin = Quantity(
                self.op,
                self.value,
                self.dimension,
                self.args,
                data=self.data,
                low=self.low,
                high=self.high,
                origin=self.origin,
                gates=self.gates,
                integer=self.integer,
            )
        twin.name = name
        twin.label = label or self.label or name.rpartition(".")[2].replace("_", " ")
        twin.rule = rule or self.rule
        twin.source = source or self.source
        return twin

    @property
    def firm(self) -> bool:
        """Whether it rests on no gate that is still to be measured."""
        return not self.gates

    def __add__(self, other: Quantity | float) -> Quantity:
        return _same("add", self, _lift(other))

    def __radd__(self, other: float) -> Quantity:
        return _same("add", _lift(other), self)

    def __sub__(self, other: Quantity | float) -> Quantity:
        return _same("subtract", self, _lift(other))

    def __rsub__(self, other: float) -> Quantity:
        return _same("subtract", _lift(other), self)

    def __mul__(self, other: Quantity | float) -> Quantity:
        right = _lift(other)
        return _record("multiply", self.dimension.times(right.dimension), (self, right))

    def __rmul__(self, other: float) -> Quantity:
        return _lift(other) * self

    def __truediv__(self, other: Quantity | float) -> Quantity:
        right = _lift(other)
        return _record("divide", self.dimension.per(right.dimension), (self, right))

    def __rtruediv__(self, other: float) -> Quantity:
        return _lift(other) / self

    def __neg__(self) -> Quantity:
        return _record("negate", self.dimension, (self,))

    def _refuse(self, *_: object) -> NoReturn:
        raise TypeError(
            f"{self!r} cannot be compared or turned into a plain number: that would hide what "
            "the result rests on. Use choose, maximum, minimum, ceil or given."
        )

    __lt__ = __le__ = __gt__ = __ge__ = __bool__ = __float__ = __int__ = __index__ = _refuse

    def __repr__(self) -> str:
        return f"<{self.name or self.op} {self.value:g} {self.dimension}>"


def _union(args: tuple[Quantity, ...]) -> frozenset[str]:
    gates = NO_GATES
    for arg in args:
        if arg.gates and arg.gates is not gates:
            gates = gates | arg.gates if gates else arg.gates
    return gates


def _lift(value: Quantity | float) -> Quantity:
    return value if isinstance(value, Quantity) else number(value)


def _record(
    op: str, dimension: Dimension, args: tuple[Quantity, ...], data: Any = None
) -> Quantity:
    value = EVALUATE[op]([arg.value for arg in args], data)
    return Quantity(op, value, dimension, args, data=data)


def same_dimension(what: str, args: tuple[Quantity, ...]) -> Dimension:
    """The dimension all ``args`` share; raises :class:`DimensionError` if they do not."""
    first = args[0].dimension
    for arg in args[1:]:
        if arg.dimension != first:
            raise DimensionError(f"cannot {what} {args[0]!r} and {arg!r}: their dimensions differ")
    return first


def _same(op: str, *args: Quantity) -> Quantity:
    return _record(op, same_dimension(op, args), args)


def number(value: float) -> Quantity:
    """A plain number in a formula, such as the 2 of ``2 * square``."""
    return Quantity("leaf", float(value), RATIO, origin=Origin("constant"))


def leaf(
    value: float,
    dimension: Dimension,
    name: str,
    origin: Origin,
    *,
    low: float | None = None,
    high: float | None = None,
    label: str = "",
    integer: bool = False,
) -> Quantity:
    """A number that enters the computation from outside; ``low`` to ``high`` is its 95 % range."""
    if low is not None and high is not None and not low <= value <= high:
        raise ValueError(f"{name}: {value:g} is not between {low:g} and {high:g}")
    made = Quantity(
        "leaf", float(value), dimension, low=low, high=high, origin=origin, integer=integer
    )
    return made.named(name, label=label)


def estimate(q: Quantity, name: str, *, low: Quantity, high: Quantity, citation: str) -> Quantity:
    """``q`` times an uncertain factor of one: its band widens to ``low`` and ``high`` of ``q``.

    For a computed number that a rule of the trade gives only as a range. Both ends are
    ratios (0.9 and 1.1: ten per cent either way).
    """
    spread = leaf(
        1.0, RATIO, name, Origin("default", citation=citation), low=low.value, high=high.value
    )
    return given(q * spread, low, high)


def count(value: int, name: str, origin: Origin, *, label: str = "") -> Quantity:
    """A whole number from outside."""
    return leaf(value, RATIO, name, origin, label=label, integer=True)


def maximum(*args: Quantity) -> Quantity:
    """The largest, recorded: an argument that lost still counts for band and gates."""
    return _same("maximum", *args)


def minimum(*args: Quantity) -> Quantity:
    """The smallest, recorded."""
    return _same("minimum", *args)


def total(args: list[Quantity] | tuple[Quantity, ...]) -> Quantity:
    """The sum of one or more quantities."""
    return _same("add", *args)


def ceil(q: Quantity) -> Quantity:
    """Up to the next whole number (a ratio)."""
    return _record("ceil", same_dimension("round", (q, number(0))), (q,))


def floor(q: Quantity) -> Quantity:
    """Down to the next whole number (a ratio)."""
    return _record("floor", same_dimension("round", (q, number(0))), (q,))


def root(q: Quantity) -> Quantity:
    """Square root; every exponent of the dimension must be even."""
    return _record("root", q.dimension.root(), (q,))


def rounded(q: Quantity, step: float) -> Quantity:
    """To the nearest ``step`` (canonical units). Bands are replayed without it."""
    return _record("round", q.dimension, (q,), step)


def rounded_up(q: Quantity, step: float) -> Quantity:
    """Up to the next ``step`` (canonical units)."""
    return _record("round-up", q.dimension, (q,), step)


def choose(a: Quantity, b: Quantity, then: Quantity, otherwise: Quantity) -> Quantity:
    """``then`` where ``a`` is greater than ``b``, else ``otherwise``; rests on all four."""
    same_dimension("compare", (a, b))
    return _record(
        "choose", same_dimension("choose between", (then, otherwise)), (a, b, then, otherwise)
    )


def given(q: Quantity, *controls: Quantity) -> Quantity:
    """``q``, where ``controls`` decided how it was computed (a loop count, a sheet chosen)."""
    return _record("given", q.dimension, (q, *controls))


def opaque(
    fn: Callable[..., float], inputs: tuple[Quantity, ...], dimension: Dimension
) -> Quantity:
    """``fn`` of the inputs' values: a mesh's volume, say. ``fn`` is pure and importable."""
    return _record("opaque", dimension, inputs, fn)


def gate(
    estimated: Quantity, reading: Quantity | None, gate_id: str, key: str, label: str
) -> Quantity:
    """``estimated`` until its gate is measured, then the reading.

    Until then the result rests on ``gate_id``; afterwards on nothing. The estimate stays
    in the derivation either way, for the report of how far off it was and for blanks.
    """
    known = Gated(gate_id, key, label, read=reading is not None)
    args: tuple[Quantity, ...]
    if reading is None:
        gates = estimated.gates | {gate_id}
        value, args = estimated.value, (estimated,)
    else:
        same_dimension("replace", (estimated, reading))
        gates, value, args = NO_GATES, reading.value, (estimated, reading)
    return Quantity("gate", value, estimated.dimension, args, data=known, gates=gates)
