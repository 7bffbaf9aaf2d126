"""What is drawn on a page of a PDF, read back from its content stream, in mm from the top left."""

from dataclasses import dataclass, field

from pypdf import PageObject
from pypdf.generic import ContentStream

MM = 25.4 / 72
"""ISO 32000-1:2008, 8.3.2.3: the unit of default user space is 1/72 in."""

Matrix = tuple[float, float, float, float, float, float]
Point = tuple[float, float]
_NUMBERS = {"m", "l", "c", "re", "cm", "w"}
_PAINT = {"S", "s", "f", "F", "f*", "B", "B*", "b", "b*"}


@dataclass
class Drawn:
    """One painted path; ``curved`` holds the ends of curves, ``clip`` the clip at the time."""

    rings: list[list[Point]]
    closed: list[bool]
    curved: bool
    paint: str
    width: float
    dashes: list[float]
    clip: list[list[Point]] | None


@dataclass
class State:
    matrix: Matrix = (1, 0, 0, 1, 0, 0)
    width: float = 1.0
    dashes: list[float] = field(default_factory=list)
    clip: list[list[Point]] | None = None


def before(inner: Matrix, outer: Matrix) -> Matrix:
    """``inner`` and then ``outer`` (ISO 32000-1:2008, 8.3.4)."""
    a, b, c, d, e, f = inner
    g, h, i, j, k, m = outer
    return (
        a * g + b * i,
        a * h + b * j,
        c * g + d * i,
        c * h + d * j,
        e * g + f * i + k,
        e * h + f * j + m,
    )


def drawn(page: PageObject) -> list[Drawn]:
    """Every painted path of ``page`` in order."""
    high = float(page.mediabox.height)
    state, saved, found = State(), [], []
    rings: list[list[Point]] = []
    closed: list[bool] = []
    curved = clipping = False

    def put(x: float, y: float) -> Point:
        a, b, c, d, e, f = state.matrix
        return (a * x + c * y + e) * MM, (high - (b * x + d * y + f)) * MM

    for operands, code in ContentStream(page.get_contents(), page.pdf).operations:
        name = code.decode()
        numbers = [float(one) for one in operands] if name in _NUMBERS else []
        if name == "q":
            saved.append(State(state.matrix, state.width, state.dashes, state.clip))
        elif name == "Q":
            state = saved.pop()
        elif name == "cm":
            state.matrix = before(tuple(numbers), state.matrix)
        elif name == "w":
            state.width = numbers[0]
        elif name == "d":
            state.dashes = [float(one) for one in operands[0]]
        elif name == "m":
            rings.append([put(*numbers)])
            closed.append(False)
        elif name == "l":
            rings[-1].append(put(*numbers))
        elif name == "c":
            rings[-1].append(put(*numbers[4:]))
            curved = True
        elif name == "re":
            x, y, w, h = numbers
            rings.append([put(x, y), put(x + w, y), put(x + w, y + h), put(x, y + h)])
            closed.append(True)
        elif name == "h":
            closed[-1] = True
        elif name in ("W", "W*"):
            clipping = True
        elif name in _PAINT or name == "n":
            if clipping:
                state.clip = rings
            elif rings and name != "n":
                scale = abs(state.matrix[0]) * MM
                dashes = [one * scale for one in state.dashes]
                found.append(
                    Drawn(rings, closed, curved, name, state.width * scale, dashes, state.clip)
                )
            rings, closed, curved, clipping = [], [], False, False
    return found


def box(shape: Drawn) -> tuple[float, float, float, float]:
    """Left, top, right, foot."""
    xs = [x for ring in shape.rings for x, _ in ring]
    ys = [y for ring in shape.rings for _, y in ring]
    return min(xs), min(ys), max(xs), max(ys)
