"""``tissue-skin``: sheets of tissue in thinned glue, the lightest skin there is."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Any

from msgspec import Meta

from foredge.contract import (
    Book,
    Count,
    Operation,
    Part,
    Quantity,
    SkinFigures,
    SkinJob,
    SkinOptions,
    SkinResult,
    StageResult,
    Use,
    cited,
    say,
    skin_figures,
)

ROW = "tissue"


class TissueSkinOptions(SkinOptions, frozen=True, kw_only=True, tag="tissue-skin"):
    """Tissue and thinned white glue."""

    sheets: Annotated[Count, Meta(description="Sheets one on the other.")] | None = None


@dataclass(frozen=True, slots=True)
class TissueSkin:
    """Follows every crease of the core; there is nothing to model with."""

    kind: str = "skin"
    name: str = "tissue-skin"
    title: str = "Tissue and glue"
    options: type[TissueSkinOptions] = TissueSkinOptions

    def figures(self, book: Book, part: Part[Any]) -> SkinFigures:
        """As thick as its sheets and the glue in them come to when dry."""
        row = _Row(book, part.options)
        said = part.options.dry_density
        dry = said if said is not None else row.figure("dry_density")
        return skin_figures(book, part, ROW, "tissue", row.sheets * row.sheet_dry / dry)

    def mix(self, job: SkinJob) -> SkinResult:
        """Thin the glue, tear the tissue."""
        row = _Row(job.book, job.part.options)
        spare = 1 + job.figures.waste
        tissue = (row.sheets * job.area * spare).named(
            f"{job.prefix}.tissue",
            label="tissue",
            rule="the surface it covers, once for every sheet, and some spare",
            source=cited(job.figures.waste, "the maker's choice"),
        )
        glue = (row.sheets * job.area * row.figure("glue_per_sheet") * spare).named(
            f"{job.prefix}.glue",
            label="thinned glue",
            rule="what one sheet drinks, once for every sheet",
            source=cited(row.figure("glue_per_sheet")),
        )
        operation = Operation(
            f"sculpt.thin-glue{job.suffix}",
            "Thin the glue and tear the tissue",
            (
                say("Stir white glue into as much water: {glue} in all.", glue=glue),
                say("Tear {tissue} of tissue into strips; torn edges do not show.", tissue=tissue),
            ),
            job.book.practice("hand-set-up"),
            after=job.due,
            cautions=job.figures.cautions,
            uses=(
                Use(
                    job.book.words("adhesives", "pva", "title"),
                    glue / 2,
                    note="thinned with as much water",
                ),
                Use("Tissue", tissue, note="torn into strips"),
            ),
            tools=("soft brush", "jar"),
            batch=True,
        )
        lay = (
            say("Brush glue on, lay a strip, brush glue over it; each overlaps the last by half."),
            say("{sheets} sheets one on the other; the first must not be wet through to the core.",
                sheets=row.sheets),
        )  # fmt: skip
        work = StageResult(quantities=(tissue, glue), operations=(operation,))
        return SkinResult(work, operation.id, lay)


@dataclass(frozen=True, slots=True)
class _Row:
    """The figures of one sheet."""

    book: Book
    said: TissueSkinOptions

    def figure(self, name: str) -> Quantity:
        return self.book.table("clays", ROW, name)

    @property
    def sheets(self) -> Quantity:
        return self.said.sheets if self.said.sheets is not None else self.figure("sheets")

    @property
    def sheet_dry(self) -> Quantity:
        """Tissue and dry glue of one sheet, by area."""
        glue = self.figure("glue_per_sheet") * self.figure("glue_solids")
        return self.figure("sheet_grammage") + glue


PLUGIN = TissueSkin()
