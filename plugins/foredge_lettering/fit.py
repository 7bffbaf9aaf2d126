"""How high the letters stand: as asked, or the largest that fits; and what does not fit."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    LENGTH,
    RATIO,
    Origin,
    OrnamentJob,
    Problem,
    Quantity,
    cited,
    error,
    floor,
    leaf,
    minimum,
    number,
)
from foredge_lettering.place import Place
from foredge_lettering.setting import Setting

SLACK = 0.01
"""mm by which letters may overrun their box: rounding, not ink."""


@dataclass(frozen=True, slots=True)
class Fit:
    """``height`` of the capitals; ``wide`` and ``deep`` the ink of the whole text, its line's
    width included; ``most`` the largest height that fits; ``problems`` where it does not."""

    height: Quantity
    wide: Quantity
    deep: Quantity
    most: Quantity
    problems: tuple[Problem, ...]

    @property
    def quantities(self) -> tuple[Quantity, ...]:
        """What is named."""
        return self.height, self.wide, self.deep


def fit_text(
    job: OrnamentJob, place: Place, setting: Setting, stroke: Quantity, citation: str
) -> Fit:
    """The height that the options ask for, or as large as box and spine allow."""
    name = f"finishing.{job.key}"
    across, down = (
        leaf(ratio, RATIO, f"{name}.{word}", Origin("constant", citation=citation), label=label)
        for ratio, word, label in (
            (setting.width, "width_by_height", "widest line by the height of its capitals"),
            (setting.height, "depth_by_height", "all lines by the height of their capitals"),
        )
    )
    line = number(0) * stroke if setting.filled else stroke
    most = minimum((place.along - line) / across, (place.deep - line) / down)
    usual = most
    if job.part.options.on == "spine" and place.runs != "across":
        usual = minimum(most, place.panel_width * job.book.default("letter-spine"))
    said = job.part.options.height
    height = (_step_down(job, usual) if said is None else said).named(
        f"{name}.height",
        label="height of the capitals",
        rule=_rule(usual is most) if said is None else "as decided",
        source=_why(job, usual is most) if said is None else "the maker's choice",
    )
    wide = (height * across + line).named(
        f"{name}.width",
        label="length of the widest line of letters",
        rule="by the letters' own widths, and the line's width",
        source=citation,
    )
    deep = (height * down + line).named(
        f"{name}.depth",
        label="all lines of letters, from the first to the last",
        rule="by the letters' own heights and the leading, and the line's width",
        source=citation,
    )
    problems = _problems(job, place, setting, height, most, (wide, deep))
    return Fit(height, wide, deep, most, tuple(problems))


def _rule(plain: bool) -> str:
    fits = "the largest that fits the box both ways"
    return fits if plain else f"{fits}, and no higher than its share of the spine's width"


def _why(job: OrnamentJob, plain: bool) -> str:
    return "geometry" if plain else cited(job.book.practice("letter-spine"))


def _step_down(job: OrnamentJob, height: Quantity) -> Quantity:
    step = leaf(job.book.step_mm, LENGTH, "step", Origin("constant"), label="the maker's step")
    return floor(height / step) * step


def _problems(
    job: OrnamentJob,
    place: Place,
    setting: Setting,
    height: Quantity,
    most: Quantity,
    ink: tuple[Quantity, Quantity],
) -> list[Problem]:
    path = (*job.part.path, "text")
    if height.value <= 0:
        return [
            error(
                path,
                f"the text cannot fit: the box is {place.along.value:.1f} mm along the lines and "
                f"{place.deep.value:.1f} mm across them, and no letters are that small",
                "lettering-does-not-fit",
                remedy="Make the box larger, the text shorter, or the line of the tool thinner",
            )
        ]
    over = ink[0].value - place.along.value, ink[1].value - place.deep.value
    if max(over) <= SLACK:
        return []
    return [
        error(
            (*job.part.path, "height"),
            f"{_what(setting, over, ink, place)} at a height of {height.value:.1f} mm",
            "lettering-does-not-fit",
            remedy=_remedy(_step_down(job, most).value, over[0] > SLACK),
        )
    ]


def _what(
    setting: Setting, over: tuple[float, float], ink: tuple[Quantity, Quantity], place: Place
) -> str:
    if over[0] > SLACK:
        row = max(setting.rows, key=lambda one: one.width)
        return (
            f"line {setting.rows.index(row) + 1}, '{row.text}', is {ink[0].value:.1f} mm long, "
            f"{over[0]:.1f} mm more than its box of {place.along.value:.1f} mm,"
        )
    lines = "the line takes" if len(setting.rows) == 1 else f"the {len(setting.rows)} lines take"
    return (
        f"{lines} {ink[1].value:.1f} mm, {over[1]:.1f} mm more than the box of "
        f"{place.deep.value:.1f} mm,"
    )


def _remedy(most: float, long: bool) -> str:
    if most <= 0:
        return "No height fits: make the box larger or the text shorter"
    lines = "break the text into more lines" if long else "put it into fewer lines"
    return f"At {most:.1f} mm it fits; or make the box larger, or {lines}"
