"""The part of a panel that a pattern covers: inside its margins, off the joint."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import OrnamentJob, Problem, Quantity, cited, error, number, warning


@dataclass(frozen=True, slots=True)
class Region:
    """``left`` is from the panel's spine edge (a paste-down: from its fold), ``top`` from its
    head. ``faces`` is how many such panels there are, 1 or 2."""

    panel_width: Quantity
    panel_height: Quantity
    left: Quantity
    top: Quantity
    width: Quantity
    height: Quantity
    faces: Quantity

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """What is named."""
        return self.left, self.width, self.height


def find_region(job: OrnamentJob) -> Region:
    """The panel less its margins and the strip at the joint."""
    options, book, name = job.part.options, job.book, f"finishing.{job.key}"
    wide, high = job.faces.size(options.on)
    inside = options.on == "paste-downs"
    usual = book.default("pattern-margin")
    margin = usual if options.margin is None else options.margin
    strip = book.default("pattern-joint-strip")
    clear = strip if options.clear is None else options.clear
    if inside:
        clear = job.faces.joint + clear
    left = clear.named(
        f"{name}.clear",
        label="kept free beside the spine",
        rule="the joint and a strip beside it" if inside else "a strip beside the joint",
        source=cited(strip) if options.clear is None else "the maker's choice",
    )
    why = cited(usual) if options.margin is None else "the maker's choice"
    width = (wide - left - margin).named(
        f"{name}.field.width",
        label="width of the pattern's field",
        rule="the panel less the strip beside the spine and the margin at the fore-edge",
        source=why,
    )
    height = (high - 2 * margin).named(
        f"{name}.field.height",
        label="height of the pattern's field",
        rule="the panel less the margins at head and tail",
        source=why,
    )
    return Region(wide, high, left, margin, width, height, number(2 if inside else 1))


def region_problems(job: OrnamentJob, region: Region) -> list[Problem]:
    """A field with no room in it; a pattern that reaches into the joint."""
    path, options = job.part.path, job.part.options
    if min(region.width.value, region.height.value) <= 0:
        return [
            error(
                path,
                f"the margins leave {region.width.value:.1f} by {region.height.value:.1f} mm for "
                "the pattern",
                "pattern-no-room",
                remedy="Make margin and clear smaller",
            )
        ]
    strip = job.book.default("pattern-joint-strip")
    if options.clear is None or options.clear.value >= strip.value - 0.05:
        return []
    return [
        warning(
            (*path, "clear"),
            f"the pattern comes within {options.clear.value:.1f} mm of the joint; "
            f"{strip.value:.0f} mm is usual",
            "pattern-near-joint",
            consequence="Stiff pieces beside the joint lift or crack when the board opens",
            remedy="Leave a wider strip clear",
            source=cited(strip),
        )
    ]


def too_large(job: OrnamentJob, region: Region, width: Quantity, height: Quantity) -> list[Problem]:
    """A piece that does not go into the field even once."""
    if width.value <= region.width.value and height.value <= region.height.value:
        return []
    return [
        error(
            job.part.path,
            f"a piece of {width.value:.1f} by {height.value:.1f} mm is larger than the field of "
            f"{region.width.value:.1f} by {region.height.value:.1f} mm",
            "pattern-piece-too-large",
            remedy="Make the pieces or the margins smaller",
        )
    ]


MOST = 5000
"""More pieces than anyone cuts; beyond it the spec has a slip in it."""


def too_many(job: OrnamentJob, count: Quantity) -> list[Problem]:
    """More pieces than can be meant."""
    if count.value <= MOST:
        return []
    return [
        error(
            job.part.path,
            f"the pattern would have {count.value:.0f} pieces; the most is {MOST}",
            "pattern-too-many",
            remedy="Make the pieces larger",
        )
    ]
