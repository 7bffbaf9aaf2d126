"""The reliefs of the spec as solids: one a panel, measured, or problems that say why not."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Book,
    Panel,
    Part,
    Path,
    Problem,
    Quantity,
    ReliefShape,
    Severity,
    Shaped,
    SkinFigures,
    SolidError,
    SolidReport,
    Upstream,
    cited,
    depth_of,
    error,
    figures_of,
    lost_under_skin,
    maximum,
    measure_solids,
    panel_of,
    reliefs_of,
    shapes_of,
    shut_below,
)

PANELS = ("front", "back", "spine")
WORDS = {"front": "front board", "back": "back board", "spine": "spine"}


@dataclass(frozen=True, slots=True)
class Relief:
    """One relief, ready for everything that follows from its form.

    ``skin`` is the dry thickness as a hand lays it on, ``socket`` the share by which the
    socket of a rigid inset is wider.
    """

    book: Book
    part: Part[Any]
    upstream: Upstream
    panel: Panel
    shaped: tuple[Shaped, ...]
    figures: SkinFigures
    skin: Quantity
    socket: Quantity
    report: SolidReport

    @property
    def on(self) -> str:
        """``front``, ``back`` or ``spine``."""
        return self.panel.name

    @property
    def where(self) -> str:
        """What a sentence calls the panel."""
        return WORDS[self.on]

    @property
    def options(self) -> Any:
        """What the spec says of it."""
        return self.part.options

    @property
    def made_on(self) -> str:
        """``bare-board``, ``covered-case`` or ``finished-book``."""
        return str(self.options.made_on)

    @property
    def shut(self) -> str:
        """What under it takes no water, as a sentence calls it; empty where something does."""
        return shut_below(self.book, self.part)

    @property
    def oven(self) -> bool:
        """Whether its clay is dried in an oven."""
        return bool(self.options.drying == "oven")

    @property
    def shapes(self) -> tuple[ReliefShape, ...]:
        """Its parts as solids."""
        return tuple(one.shape for one in self.shaped)

    def made(self, what: str) -> tuple[Shaped, ...]:
        """Its parts that are made ``what``: ``core``, ``clay`` or ``rigid``."""
        return tuple(one for one in self.shaped if one.shape.made == what)

    @property
    def deepest(self) -> Quantity | None:
        """The thickest solid clay; None where all of it is a skin."""
        depths = [depth_of(piece) for one in self.made("clay") for piece in one.shape.pieces]
        return maximum(*depths) if depths else None

    def called(self, *figures: Quantity) -> tuple[Quantity, ...]:
        """Figures of the solids under labels that tell one panel from another."""
        return tuple(one.named(one.name or "", label=f"{one.label}, {self.on}") for one in figures)

    def op(self, verb: str, place: int | None = None) -> str:
        """The id of one of its operations: ``sculpt.skin-front-2``."""
        return f"sculpt.{verb}-{self.on}" + (f"-{place}" if place is not None else "")


def read_reliefs(book: Book, upstream: Upstream) -> tuple[tuple[Relief, ...], list[Problem]]:
    """Every relief that can be made, and what is wrong with the others."""
    found: list[Relief] = []
    problems: list[Problem] = []
    taken: set[str] = set()
    for part in reliefs_of(book):
        faults = [*_faults(part, taken), *_core_faults(book, part)]
        taken.add(part.options.on)
        relief = None if faults else _read(book, upstream, part, faults)
        problems += faults
        if relief is not None:
            found.append(relief)
    return tuple(found), problems


def _faults(part: Part[Any], taken: set[str]) -> list[Problem]:
    said = part.options
    faults = []
    if said.on in taken:
        faults.append(
            error(
                (*part.path, "on"),
                f"there is a relief on the {WORDS[said.on]} already",
                "relief-twice",
                remedy="Put all parts of one panel under one relief",
            )
        )
    if said.on == "spine" and said.made_on == "bare-board":
        faults.append(
            error(
                (*part.path, "made_on"),
                "a relief on the spine cannot be made on a bare board",
                "relief-on-bare-spine",
                remedy="Make it on the covered case or on the finished book",
            )
        )
    return faults


_CORE = {"foil": ("crumpled of", ("foil", "paper")), "tape": ("wrapped in", ("tape",))}
"""What is done with the stuff of a core, and the kinds of its rows that bear it."""


def _core_faults(book: Book, part: Part[Any]) -> list[Problem]:
    """A core of tape, or one that is wrapped in wire."""
    faults = []
    for key, (verb, kinds) in _CORE.items():
        row = getattr(part.options.core, key)
        kind = book.words("armature", row, "kind")
        if kind not in kinds:
            faults.append(
                error(
                    (*part.path, "core", key),
                    f"a core is not {verb} '{row}', which is {kind}",
                    "core-unfit",
                    remedy="Take foil, heavy-foil or newspaper"
                    if key == "foil"
                    else "Take masking-tape or foil-tape",
                )
            )
    return faults


def _read(
    book: Book, upstream: Upstream, part: Part[Any], problems: list[Problem]
) -> Relief | None:
    """The relief of ``part``; what is wrong with its parts is added to ``problems``."""
    panel = panel_of(upstream.quantity, part.options.on)
    shaped, said = shapes_of(book, part, panel)
    problems += said
    if any(problem.severity is Severity.ERROR for problem in said):
        return None
    figures = figures_of(book, part)
    skin = _skin(book, part, figures)
    socket = part.options.socket if part.options.socket is not None else figures.shrinkage
    shapes = tuple(one.shape for one in shaped)
    buried = [_buried(one, skin) for one in shaped]
    if any(buried):
        problems += [one for one in buried if one is not None]
        return None
    try:
        report = measure_solids(shapes, skin, prefix=f"sculpt.{panel.name}", shrinkage=socket)
    except SolidError as failure:
        problems.append(_impossible(part.path, str(failure)))
        return None
    return Relief(book, part, upstream, panel, shaped, figures, skin, socket, report)


def _buried(one: Shaped, skin: Quantity) -> Problem | None:
    """A part whose form is lost under so thick a skin."""
    for piece in one.shape.pieces if one.shape.made == "core" else ():
        lost = lost_under_skin(piece, skin)
        if lost:
            return error(
                one.part.path,
                f"the form of '{one.name}' is lost: {lost}",
                "skin-buries-part",
                remedy="Take a thinner skin or a larger part, or model it in clay: core: none",
            )
    return None


def _skin(book: Book, part: Part[Any], figures: SkinFigures) -> Quantity:
    uneven = book.practice("skin-spread")
    return (figures.thickness * uneven).named(
        f"sculpt.skin.{part.options.on}",
        label=f"dry skin, {part.options.on}",
        rule="as thick as asked for, as even as a hand lays it",
        source=cited(uneven),
    )


def _impossible(path: Path, text: str) -> Problem:
    return error(
        (*path, "parts"),
        f"this relief cannot be modelled: {text}",
        "relief-impossible",
        remedy="Look at the sizes of its parts and at the thickness of the skin",
    )
