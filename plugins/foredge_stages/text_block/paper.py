"""How many folios a sheet gives, in which direction of the grain, and what is left of it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from foredge.contract import (
    Book,
    Face,
    Figures,
    Problem,
    Quantity,
    Sheet,
    ceil,
    choose,
    error,
    faces,
    given,
    number,
    pieces_from,
    total,
    warning,
)
from foredge_stages.text_block.crease import Placement, crease_used, creased_leaves, place
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.sizes import Sizes
from foredge_stages.text_block.terms import GEOMETRY, SECTION, mm, name, plain, zero

YIELD_RULE = "whole folios side by side, every one with its fold the same way"


@dataclass(frozen=True, slots=True)
class Yield:
    """A sheet cut into pieces. ``along`` says whether the spine lies along the grain.

    ``placement`` says where the pieces lie; ``turned`` that their fold runs along the
    sheet's width. ``grain_known`` is whether the spec knows the grain. ``shelf`` is how many
    folios all sheets on the shelf give, in every size; None where they are not counted.
    """

    sheet: Sheet
    placement: Placement
    turned: bool
    along: bool
    grain_known: bool
    per_sheet: Quantity
    shelf: Quantity | None
    quantities: tuple[Quantity, ...]
    problems: tuple[Problem, ...]


def lay_out(book: Book, options: TextBlockOptions, size: Sizes) -> Yield:
    """Lay the pieces on the sheet, in the grain the spec allows."""
    sheet = book.stock[options.paper]
    assert isinstance(sheet, Sheet)
    # A fold along the sheet's height has the sheet's width across it, and the other way round.
    own, *others = faces(sheet)
    upright = pieces_from(own, False, size.piece_width, size.piece_height)
    turned = pieces_from(own, True, size.piece_width, size.piece_height)
    known = sheet.grain != "unknown"
    good, bad = (turned, upright) if sheet.grain == "width" else (upright, turned)
    if not known:
        good, bad = (upright, turned) if upright.value >= turned.value else (turned, upright)
    along = _grain_kept(options, known, good, bad)
    picked, which = (good, "along") if along else (bad, "across")
    is_turned = picked is turned
    placement = place(options, sheet, size, is_turned)
    folios = (given(picked, good, bad) * size.piece_folios).named(
        name("folios_per_sheet"),
        label="folios from one sheet",
        rule=f"{YIELD_RULE}; {which} the grain" if known else f"{YIELD_RULE}; grain not known",
        source=GEOMETRY,
    )
    return Yield(
        sheet=sheet,
        placement=placement,
        turned=is_turned,
        along=along and known,
        grain_known=known,
        per_sheet=choose(folios, number(0), folios, number(1)) if folios.value < 1 else folios,
        shelf=_shelf(own, others, folios, is_turned, size),
        quantities=(*_both_ways(size, known, good, bad), folios, *crease_used(placement)),
        problems=tuple(_problems(options, sheet, size, good, bad, along, placement)),
    )


def _shelf(
    own: Face, others: Sequence[Face], folios: Quantity, turned: bool, size: Sizes
) -> Quantity | None:
    """Folios from all sheets on the shelf, of the sheet's own size and the ``others``."""
    sums = [] if own.count is None else [own.count * folios]
    for face in others:
        if face.count is not None:
            pieces = pieces_from(face, turned, size.piece_width, size.piece_height)
            sums.append(face.count * pieces * size.piece_folios)
    return total(sums) if len(sums) == 1 + len(others) else None


def _both_ways(size: Sizes, known: bool, good: Quantity, bad: Quantity) -> tuple[Quantity, ...]:
    """Folios from a sheet either way, so that both stand in the sheet."""
    return tuple(
        (count * size.piece_folios).named(
            name(f"yield.{key}"), label=f"folios from a sheet, {words}", rule=YIELD_RULE,
            source=GEOMETRY,
        )
        for key, words, count in (
            ("along", "grain along the spine" if known else "the better way", good),
            ("across", "grain across the spine" if known else "the other way", bad),
        )
    )  # fmt: skip


def _grain_kept(options: TextBlockOptions, known: bool, good: Quantity, bad: Quantity) -> bool:
    if not known or options.grain == "along":
        return True
    if options.grain == "either":
        return good.value >= bad.value
    return good.value > 0 or bad.value == 0


def _problems(
    options: TextBlockOptions,
    sheet: Sheet,
    size: Sizes,
    good: Quantity,
    bad: Quantity,
    along: bool,
    placement: Placement,
) -> list[Problem]:
    if good.value < 1 and bad.value < 1:
        return [_spoiled(options, sheet, size) or _too_large(options, sheet, size)]
    if along and good.value < 1:
        return [_none_in_grain(options, size, bad)]
    found = creased_leaves(options, sheet, placement)
    if sheet.grain == "unknown":
        found.append(_unknown(options))
    elif not along:
        found.append(_across(options, good, bad))
    return found


def _spoiled(options: TextBlockOptions, sheet: Sheet, size: Sizes) -> Problem | None:
    """The error where a whole clean sheet would do; None where even that is too small."""
    own = faces(sheet)[0]
    clean = replace(own, keep_out=(), edge=zero(), kerf=zero())
    width, height = size.piece_width, size.piece_height
    if all(pieces_from(clean, turned, width, height).value < 1 for turned in (False, True)):
        return None
    causes = (("edge", own.edge.value), ("keep_out", len(own.keep_out)), ("kerf", own.kerf.value))
    key = next(key for key, said in causes if said)
    return error(
        ("stock", options.paper, key),
        f"what is spoiled, cut away or lost at cuts leaves no room on '{options.paper}', "
        f"{mm(sheet.width)} by {mm(sheet.height)}, for a folio of {mm(width)} by {mm(height)}",
        "folio-larger-than-sheet",
        consequence="Not one folio can be cut",
        remedy="Look at edge, keep_out and kerf of the sheet, or make the leaf smaller",
        on_key=True,
    )


def _too_large(options: TextBlockOptions, sheet: Sheet, size: Sizes) -> Problem:
    width, height = size.piece_width, size.piece_height
    ways = (
        (width.value - sheet.width.value, height.value - sheet.height.value),
        (width.value - sheet.height.value, height.value - sheet.width.value),
    )
    over = min(ways, key=lambda way: sum(max(0.0, amount) for amount in way))
    short = " and ".join(
        f"{amount:.1f}".removesuffix(".0") + f" mm {side}"
        for amount, side in zip(over, ("across the fold", "along the fold"), strict=True)
        if amount > 0
    )
    return error(
        (SECTION, "leaf"),
        f"a folio of {mm(width)} by {mm(height)} is larger than the sheet '{options.paper}', "
        f"{mm(sheet.width)} by {mm(sheet.height)}: it lacks {short}",
        "folio-larger-than-sheet",
        consequence="Not one folio can be cut",
        remedy="Make the leaf smaller, trim less, or use a larger sheet",
    )


def _none_in_grain(options: TextBlockOptions, size: Sizes, bad: Quantity) -> Problem:
    return error(
        (SECTION, "paper"),
        f"no folio of {mm(size.piece_width)} by {mm(size.piece_height)} fits '{options.paper}' "
        f"with its grain along the spine; {plain(bad)} would fit across",
        "no-folio-in-grain",
        consequence="Not one folio can be cut in the grain that is allowed",
        remedy="Choose a smaller leaf, a larger sheet, or grain: prefer-along",
    )


def _unknown(options: TextBlockOptions) -> Problem:
    return warning(
        (SECTION, "paper"),
        f"the grain of '{options.paper}' is not known: the layout takes the way that gives more",
        "grain-unknown",
        consequence="Across the spine the pages cockle at the gutter and will not lie down",
        remedy="Test a sheet (first step of the sheet) and write grain: width or height",
        source="Skin Deep vol. 10 (J. Hewit & Sons), on paper grain",
    )


def _across(options: TextBlockOptions, good: Quantity, bad: Quantity) -> Problem:
    reason = "no folio fits the other way" if good.value < 1 else f"along it {plain(good)}"
    return warning(
        (SECTION, "paper"),
        f"the grain of '{options.paper}' runs across the spine: {plain(bad)} "
        f"{'folio' if bad.value == 1 else 'folios'} to a sheet, {reason}",
        "grain-across-spine",
        consequence="Pages cockle at the gutter, turn stiffly and swell the spine",
        remedy="Quarter larger sheets, buy the other grain, or accept it for a practice copy",
        source="Skin Deep vol. 10 (J. Hewit & Sons), on paper grain",
    )


def off_cuts(
    layout: Yield, size: Sizes, sheets: Quantity, paper: Figures
) -> tuple[tuple[Quantity, ...], Quantity]:
    """The strips left of one sheet, and the mass of all of them."""
    if faces(layout.sheet)[0].spoiled:
        return (), _spoiled_mass(layout, size, sheets, paper)
    named: list[Quantity] = []
    areas: list[Quantity] = []
    for strip in layout.placement.strips:
        for side, q in (("width", strip.width), ("height", strip.height)):
            named.append(
                q.named(
                    name(f"offcut.{strip.name}.{side}"),
                    label=f"off-cut strip ({strip.name.replace(chr(95), chr(32))}), {side}",
                    rule="the sheet less the folios laid on it",
                    source=GEOMETRY,
                )
            )
        areas.append(strip.width * strip.height)
    area = total(areas) if areas else zero() * zero()
    return tuple(named), _mass(area, sheets, paper)


def _mass(area: Quantity, sheets: Quantity, paper: Figures) -> Quantity:
    return (area * paper.grammage * sheets).named(
        name("offcuts.mass"),
        label="off-cuts, all sheets",
        rule="area of the strips by grammage; usable as pulp, practice pieces or linings",
        source=GEOMETRY,
    )


def _spoiled_mass(layout: Yield, size: Sizes, sheets: Quantity, paper: Figures) -> Quantity:
    """Of sheets with spoiled places: all that is no folio."""
    pieces = layout.per_sheet / size.piece_folios
    used = pieces * size.piece_width * size.piece_height
    return _mass(layout.sheet.width * layout.sheet.height - used, sheets, paper)


def sheets_needed(layout: Yield, folios: Quantity) -> Quantity:
    """Whole sheets for ``folios``."""
    return ceil(folios / layout.per_sheet).named(
        name("sheets"),
        label="sheets to cut up",
        rule="folios over folios from one sheet, up to whole sheets",
        source=GEOMETRY,
    )


def short_of_sheets(
    book: Book, options: TextBlockOptions, layout: Yield, sheets: Quantity, folios: Quantity
) -> list[Problem]:
    """A warning where the shelf has fewer sheets than the book needs."""
    if layout.sheet.more:
        return _short_of_folios(book, options, layout, folios)
    have = layout.sheet.count
    need = sheets * book.copies
    if have is None or have.value >= need.value:
        return []
    return [
        warning(
            ("stock", options.paper, "count"),
            f"the text block needs {plain(need)} sheets of '{options.paper}', "
            f"the shelf has {plain(have)}",
            "paper-short",
            consequence="The work stops before the last gathering",
            remedy="Use fewer gatherings or folios (fill: stock finds the most), or buy sheets",
        )
    ]


def _short_of_folios(
    book: Book, options: TextBlockOptions, layout: Yield, folios: Quantity
) -> list[Problem]:
    need = folios * book.copies
    if layout.shelf is None or layout.shelf.value >= need.value:
        return []
    return [
        warning(
            ("stock", options.paper, "more"),
            f"the text block needs {plain(need)} folios, and the sheets of '{options.paper}' in "
            f"all sizes give {plain(layout.shelf)}",
            "paper-short",
            consequence="The work stops before the last gathering",
            remedy="Use fewer gatherings or folios (fill: stock finds the most), or buy sheets",
        )
    ]
