"""Drawings put into the page itself: checked, and without anything that could act."""

from __future__ import annotations

from dataclasses import dataclass, replace
from xml.etree import ElementTree

from markupsafe import Markup

from foredge.contract import Build, CheckBar, Drawing
from foredge.drawing.svg import to_svg
from foredge.emit.html.told import harmless
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.svg import file_name, marked

_SPACE = "{http://www.w3.org/2000/svg}"
_ELEMENTS = frozenset(
    [
        "svg",
        "g",
        "title",
        "desc",
        "rect",
        "path",
        "circle",
        "ellipse",
        "line",
        "polyline",
        "polygon",
        "text",
        "tspan",
    ]
)
_ATTRIBUTES = frozenset(
    [
        "cx",
        "cy",
        "d",
        "dominant-baseline",
        "fill",
        "fill-opacity",
        "fill-rule",
        "font-family",
        "font-size",
        "font-style",
        "font-weight",
        "height",
        "letter-spacing",
        "opacity",
        "points",
        "r",
        "rx",
        "ry",
        "stroke",
        "stroke-dasharray",
        "stroke-linecap",
        "stroke-linejoin",
        "stroke-opacity",
        "stroke-width",
        "text-anchor",
        "transform",
        "viewBox",
        "width",
        "x",
        "x1",
        "x2",
        "y",
        "y1",
        "y2",
    ]
)


@dataclass(frozen=True, slots=True)
class Picture:
    """A drawing of the page. ``name`` is its file under ``drawings/``."""

    name: str
    title: str
    svg: Markup
    width: float
    height: float
    true_scale: bool


def pictures(build: Build) -> tuple[Picture, ...]:
    """Every drawing of the build, in order."""
    return tuple(picture(drawing) for drawing in all_drawings(build))


def picture(drawing: Drawing) -> Picture:
    """One drawing."""
    # A bar to hold a ruler against would lie here: the page shows no true scale.
    items = tuple(item for item in drawing.items if not isinstance(item, CheckBar))
    whole = marked(replace(drawing, items=items))
    return Picture(
        name=f"{file_name(drawing)}.svg",
        title=harmless(drawing.title),
        svg=inline(to_svg(whole)),
        width=whole.width,
        height=whole.height,
        true_scale=drawing.true_scale,
    )


def inline(svg: bytes) -> Markup:
    """An SVG file as an element of an HTML page, its size left to the page.

    Raises ValueError for an element or an attribute that no drawing of ours has: nothing that
    loads, runs or carries a style gets into the page.
    """
    root = ElementTree.fromstring(svg)
    for element in root.iter():
        name = str(element.tag).removeprefix(_SPACE)
        unknown = sorted(set(element.attrib) - _ATTRIBUTES)
        if name not in _ELEMENTS or unknown:
            raise ValueError(f"the page takes no <{name}> with {unknown} from a drawing")
        element.tag = name
        element.tail = (element.tail or "").strip() or None
    for title in root.findall("title"):
        root.remove(title)
    for size in ("width", "height"):
        root.attrib.pop(size, None)
    root.attrib |= {"aria-hidden": "true", "focusable": "false"}
    return Markup(ElementTree.tostring(root, encoding="unicode", short_empty_elements=True))
