"""Books to be finished, and what the stages before hand over; only the finishing stage is run."""

from __future__ import annotations

from functools import cache

from case_books import HEAD, TEXT_BLOCK, mm
from foredge.contract import AREA, Book, Operation, Origin, StageResult, Upstream, leaf
from foredge.registry import Registry
from foredge.testing import book_from, registry_of
from foredge_stages.finishing import PLUGIN
from ornament_books import CASE, SIZES

BOTTLE = "  sea-green: {kind: supply, material: acrylic paint, volume: 60 ml}\n"
RELIEF = """\
  - use: relief
    on: front
    made_on: covered-case
    parts: [{use: dome, x: 70 mm, y: 100 mm, diameter: 50 mm, height: 14 mm}]
"""
MORE = {
    "case.board.thickness": 2.0,
    "case.square.fore_edge": 3.0,
    "case.closed.height": 212.0,
    "case.closed.width": 160.0,
    "case.closed.thickness": 17.0,
    "text_block.block.spine": 12.0,
    "text_block.block.fore_edge": 10.0,
}
FOOT, SURFACE = 2400.0, 3600.0
"""mm2: the base of the relief and its own surface."""


@cache
def registry() -> Registry:
    return registry_of()


def book(*coats: str, embellishment: str = "", more: str = "") -> Book:
    """A book with these coats, each a flow mapping; ``embellishment`` as lines of the list."""
    listed = "".join(f"  - {coat}\n" for coat in coats)
    text = f"{HEAD}{BOTTLE}{TEXT_BLOCK}{CASE}{more}"
    if embellishment:
        text += f"embellishment:\n{embellishment}"
    return book_from(f"{text}finishing:\n{listed}" if coats else text, registry=registry())


def pressed(*, relief: bool = False, **sizes: float) -> Upstream:
    """The pressed book; ``relief`` stands 17 mm high on the front, its height behind gate G3."""
    changed = {f"case.{name.replace('__', '.')}": size for name, size in sizes.items()}
    quantities = [mm(size, name) for name, size in {**SIZES, **MORE, **changed}.items()]
    facts = [
        ("text_block.block_ready", "text-block.line-spine"),
        ("case.boards_cut", "case.cut-boards"),
        ("case.covered", "case.cover"),
        ("case.cased_in", "case.case-in"),
    ]
    results = [("case", StageResult(quantities=tuple(quantities), facts=tuple(facts)))]
    if relief:
        results.append(("sculpt", _sculpted()))
    return Upstream(tuple(results))


def _sculpted() -> StageResult:
    from foredge.quantity import gate

    height = gate(mm(17.0, "estimated relief", 2.0), None, "G3", "relief.front", "relief")
    base = leaf(FOOT, AREA, "sculpt.front.base", Origin("spec"))
    surface = leaf(SURFACE, AREA, "sculpt.front.surface", Origin("spec"))
    footprint = leaf(FOOT, AREA, "sculpt.footprint.front", Origin("spec"))
    high = height.named("sculpt.height.front", rule="given", source="test")
    flat = mm(0.0, "sculpt.height.back")
    return StageResult(
        quantities=(high, flat, base, surface, footprint),
        facts=(("sculpt.dry", "sculpt.check-dry"), ("sculpt.made_on", "covered-case")),
    )


def finished(of: Book, upstream: Upstream | None = None) -> StageResult:
    """What the stage makes of it."""
    return PLUGIN.run(of, pressed() if upstream is None else upstream)


def operation(result: StageResult, name: str) -> Operation:
    """The operation ``finishing.<name>``."""
    (found,) = [one for one in result.operations if one.id == f"finishing.{name}"]
    return found


def ids(result: StageResult) -> list[str]:
    """The operations, without the stage's name."""
    return [one.id.removeprefix("finishing.") for one in result.operations]


def words(of: Operation) -> str:
    """Its steps as the maker reads them, numbers as ``#``."""
    return " ".join(
        "".join(part if isinstance(part, str) else "#" for part in step.segments())
        for step in of.steps
    )
