"""How many gatherings, folios, leaves and pages; a folio is two leaves, a leaf two pages."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Book,
    Figures,
    Problem,
    Quantity,
    TableError,
    ceil,
    cited,
    error,
    floor,
    given,
    maximum,
    note,
    number,
    warning,
)
from foredge_stages.text_block.options import Gatherings
from foredge_stages.text_block.paper import Yield
from foredge_stages.text_block.terms import CHOICE, GEOMETRY, SECTION, name, plain

PATH = (SECTION, "gatherings")


@dataclass(frozen=True, slots=True)
class Counts:
    """``folios`` are of the whole block, ``shorter`` the gatherings with one folio fewer."""

    gatherings: Quantity
    folios: Quantity
    leaves: Quantity
    pages: Quantity
    shorter: tuple[int, ...]
    quantities: tuple[Quantity, ...]
    problems: tuple[Problem, ...]


def folios_per_gathering(
    book: Book, chosen: Gatherings, paper: Figures
) -> tuple[Quantity, list[Problem]]:
    """Folios in one gathering: the spec's, or what suits the paper; warns outside that."""
    row = paper.row if _advised(book, paper.row) else "book"
    usual = book.table("paper", row, "folios")
    own = chosen.folios
    folios = (usual if own is None else own).named(
        name("gathering.folios"),
        label="folios in a gathering",
        rule="what suits this paper" if own is None else "as the spec says",
        source=cited(usual) if own is None else CHOICE,
    )
    return folios, [] if own is None else _folio_problems(book, row, own)


def _advised(book: Book, row: str) -> bool:
    try:
        book.table("paper", row, "folios.least")
    except TableError:
        return False
    return True


def _folio_problems(book: Book, row: str, folios: Quantity) -> list[Problem]:
    least = book.table("paper", row, "folios.least")
    most = book.table("paper", row, "folios.most")
    if least.value <= folios.value <= most.value:
        return []
    advised = f"{plain(least)} to {plain(most)}" if most.value > least.value else plain(least)
    few = folios.value < least.value
    return [
        warning(
            (*PATH, "folios"),
            f"{plain(folios)} {'folio' if folios.value == 1 else 'folios'} in a gathering; "
            f"{advised} suit '{row}' paper",
            "folios-in-gathering",
            consequence="Many thin gatherings swell the spine, and thread pulls through the folds"
            if few
            else "A thick fold springs open, creeps, and strains the sewing",
            remedy=f"Take {advised} folios, or try one gathering first",
            source=cited(least),
        )
    ]


def counts(chosen: Gatherings, layout: Yield, folios: Quantity, copies: Quantity) -> Counts:
    """Everything that is counted, from the one way the spec chose."""
    problems = _exactly_one(chosen)
    found, rule = _gatherings(chosen, layout, folios, copies)
    gatherings = found.named(
        name("gatherings"), label="gatherings", rule=rule, source="common practice"
    )
    shorter = tuple(int(q.value) for q in chosen.shorter)
    fewer = given(number(len(set(shorter))), *chosen.shorter) if shorter else number(0)
    whole = (gatherings * folios - fewer).named(
        name("folios"),
        label="folios in all",
        rule="gatherings by folios, less one for each shorter gathering",
        source=GEOMETRY,
    )
    leaves = (2 * whole).named(
        name("leaves"), label="leaves", rule="a folio is two leaves", source=GEOMETRY
    )
    pages = (2 * leaves).named(
        name("pages"), label="pages", rule="a leaf is two pages, a folio four", source=GEOMETRY
    )
    problems += _shorter(shorter, gatherings, folios)
    problems += _over(chosen, pages, folios)
    made = (gatherings, whole, leaves, pages)
    return Counts(gatherings, whole, leaves, pages, shorter, made, tuple(problems))


def _gatherings(
    chosen: Gatherings, layout: Yield, folios: Quantity, copies: Quantity
) -> tuple[Quantity, str]:
    if chosen.count is not None:
        return chosen.count, "as the spec says"
    if chosen.pages is not None:
        return ceil(chosen.pages / (4 * folios)), "pages wanted over four by folios, rounded up"
    have = layout.per_sheet if layout.shelf is None else layout.shelf
    whole = floor(have / (folios * copies))
    rule = "whole gatherings from all sheets on the shelf, shared by the copies"
    return maximum(whole, number(1)), rule


def _exactly_one(chosen: Gatherings) -> list[Problem]:
    given_keys = [key for key in ("count", "pages", "fill") if getattr(chosen, key) is not None]
    if len(given_keys) == 1:
        return []
    what = "none of them" if not given_keys else " and ".join(f"'{key}'" for key in given_keys)
    return [
        error(
            PATH,
            f"say exactly one of 'count', 'pages' and 'fill: stock'; here stands {what}",
            "gatherings-one-way",
            remedy="Keep the one you mean; the others follow from it",
            on_key=True,
        )
    ]


def fill_problems(
    chosen: Gatherings, stock: str, layout: Yield, folios: Quantity, copies: Quantity
) -> list[Problem]:
    """``fill: stock`` where the shelf does not say how many sheets, or has too few."""
    if chosen.fill is None:
        return []
    if layout.shelf is None:
        return [
            error(
                (*PATH, "fill"),
                f"'fill: stock' needs to know how many sheets of '{stock}' there are",
                "fill-without-count",
                remedy=f"Write 'count' under stock, {stock}",
            )
        ]
    made = layout.shelf.value
    if made >= folios.value * copies.value:
        return []
    each = "one gathering takes" if copies.value == 1 else "a gathering for each copy takes"
    return [
        error(
            (*PATH, "fill"),
            f"the sheets on the shelf give {made:g} folios, {each} {plain(folios * copies)}",
            "stock-too-small",
            remedy="Put fewer folios in a gathering, or find more sheets",
        )
    ]


def _shorter(shorter: tuple[int, ...], gatherings: Quantity, folios: Quantity) -> list[Problem]:
    path = (*PATH, "shorter")
    last = int(gatherings.value)
    wrong = sorted({place for place in shorter if place > last})
    if wrong:
        listed = " and ".join(map(str, wrong))
        who = f"gathering {listed} is" if len(wrong) == 1 else f"gatherings {listed} are"
        return [
            error(
                path,
                f"{who} to be shorter, and there are only {last}",
                "no-gathering",
                remedy=f"Name numbers from 1 to {last}",
            )
        ]
    if shorter and folios.value < 2:
        return [
            error(
                path,
                "a gathering of one folio cannot have one fewer",
                "no-gathering",
                remedy="Lower count instead",
            )
        ]
    if not {1, last} & set(shorter):
        return []
    return [
        warning(
            path,
            "the first or the last gathering has fewer folios than the rest",
            "end-gathering-weak",
            consequence="The outer gatherings carry the pull of the boards; a thin one tears first",
            remedy="Shorten gatherings in the middle of the block",
            source="from memory",
        )
    ]


def _over(chosen: Gatherings, pages: Quantity, folios: Quantity) -> list[Problem]:
    wanted = chosen.pages
    if wanted is None:
        return []
    spare = pages.value - wanted.value
    if spare < 0:
        return [
            error(
                (*PATH, "shorter"),
                f"the shorter gatherings leave {plain(pages)} pages, {plain(wanted)} are wanted",
                "pages-too-few",
                remedy="Shorten fewer gatherings",
            )
        ]
    if spare < 4 or folios.value < 2:
        return []
    return [
        note(
            (*PATH, "pages"),
            f"{plain(wanted)} pages wanted, {plain(pages)} made: {spare:g} more stay blank",
            "pages-left-over",
            remedy=f"Name {spare // 4:g} gatherings from the middle under 'shorter' to leave "
            "one folio out of each",
        )
    ]


def collation(folios: int, first_page: int = 1) -> tuple[tuple[int, int], ...]:
    """The odd pages that share a folio, from the outermost folio of a gathering inwards.

    A gathering of ``folios`` begins at the odd page ``first_page``. The pairs are those a
    collator checks (Douglas Cockerell, Bookbinding, and the Care of Books, 1901, pp. 58-59).
    """
    last = first_page + 4 * folios - 2
    return tuple((first_page + 2 * step, last - 2 * step) for step in range(folios))
