"""Tiles: whole pieces side by side in rows and columns, in the middle of the field."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from msgspec import Meta

from foredge.contract import (
    Length,
    LengthOrZero,
    OrnamentJob,
    OrnamentResult,
    Quantity,
    Text,
    floor,
    no_ornament,
    number,
    say,
    stock_name,
)
from foredge_patterns.layout import Box, evenly
from foredge_patterns.options import PatternOptions
from foredge_patterns.ply import ply_of
from foredge_patterns.region import Region, find_region, region_problems, too_large, too_many
from foredge_patterns.sheet import pattern_sheet
from foredge_patterns.work import Pattern, errors, laid, piece_of, sized, whole


class TileOptions(PatternOptions, frozen=True, kw_only=True, tag="tile-pattern"):
    """Rows and columns of equal pieces that do not overlap."""

    stock: Annotated[
        str, stock_name("sheet", "board", "cloth"), Meta(description="What they are cut from.")
    ]
    width: Annotated[Length, Meta(description="Width of a tile.")]
    height: Annotated[Length, Meta(description="Height of a tile.")]
    gap: (
        Annotated[LengthOrZero, Meta(description="Between two tiles; none if left out.")] | None
    ) = None


@dataclass(frozen=True, slots=True)
class Grid:
    """Tiles of ``width`` by ``height``, their pitch, how many, and where the first one lies."""

    width: Quantity
    height: Quantity
    across: Quantity
    down: Quantity
    columns: Quantity
    rows: Quantity
    first_x: Quantity
    first_y: Quantity

    def boxes(self, region: Region) -> list[Box]:
        """Every tile of a field, row by row from the head."""
        wide, high = self.width.value, self.height.value
        rows, columns = round(self.rows.value), round(self.columns.value)
        return [
            Box(x, y, wide, high)
            for y in evenly(region.height.value, high, self.down.value, rows)
            for x in evenly(region.width.value, wide, self.across.value, columns)
        ]


@dataclass(frozen=True, slots=True)
class TilePattern:
    """As many whole tiles as the field holds; what is left over is shared between its sides."""

    kind: str = "embellishment"
    name: str = "tile-pattern"
    title: str = "Tile pattern"
    stage: str = "finishing"
    options: type[TileOptions] = TileOptions

    def adorn(self, job: OrnamentJob) -> OrnamentResult:
        """Rows, columns, positions, pieces and work."""
        options: TileOptions = job.part.options
        region = find_region(job)
        wrong = region_problems(job, region)
        wrong += too_large(job, region, options.width, options.height) if not wrong else []
        grid = _grid(job, options, region)
        count = grid.rows * grid.columns * region.faces
        wrong += too_many(job, count)
        if errors(wrong):
            return no_ornament(job, wrong)
        piece = piece_of(job, f"finishing.{job.key}.tile", "tile", count, (grid.width, grid.height))
        rings = tuple(box.ring for box in grid.boxes(region))
        cut = say(
            "Cut {count} tiles {width} by {height}.",
            count=count,
            width=grid.width,
            height=grid.height,
        )
        glued = count * grid.width * grid.height
        pattern = Pattern(
            title="tile pattern",
            region=region,
            ply=ply_of(job, options.stock),
            count=count,
            glued=glued,
            covers=glued,
            layers=number(1),
            cut=(cut,),
            lay=_lay(grid),
            quantities=(grid.rows, grid.columns, grid.first_x, grid.first_y),
            drawing=pattern_sheet(job, region, "Tile pattern", rings),
            rings=rings,
            pieces=(piece,),
            problems=tuple(wrong),
        )
        return laid(job, pattern)


def _grid(job: OrnamentJob, options: TileOptions, region: Region) -> Grid:
    wide, high = options.width, options.height
    across = wide if options.gap is None else wide + options.gap
    down = high if options.gap is None else high + options.gap
    # The last tile of a row needs no gap behind it.
    columns = floor((region.width - wide) / across) + 1
    rows = floor((region.height - high) / down) + 1
    left_x = (region.width - wide - (columns - 1) * across) / 2
    left_y = (region.height - high - (rows - 1) * down) / 2
    return Grid(
        wide,
        high,
        across,
        down,
        whole(columns, job, "columns", "tiles in a row", "as many as go in whole"),
        whole(rows, job, "rows", "rows of tiles", "as many as go in whole"),
        sized(job, left_x, "first_x", "field's side to the first tile", "half of what is left"),
        sized(job, left_y, "first_y", "field's head to the first row", "half of what is left"),
    )


def _lay(grid: Grid) -> tuple[Text, ...]:
    return (
        say("Lay {rows} rows of {columns} tiles.", rows=grid.rows, columns=grid.columns),
        say(
            "Begin {x} from the field's spine side and {y} from its head.",
            x=grid.first_x,
            y=grid.first_y,
        ),
        say(
            "Each tile starts {across} after the one before it, each row {down} below the last.",
            across=grid.across,
            down=grid.down,
        ),
    )


PLUGIN = TilePattern()
