"""The picture of the finished book, of the demo specs."""

from __future__ import annotations

import subprocess
import sys
from dataclasses import replace
from xml.etree import ElementTree

import pytest

from demo import DEMOS, compiled
from foredge.contract import EdgeLook, Inside, Look, Raised, Shape, Stuff
from foredge.drawing.svg import to_svg
from foredge.drawing.textbox import overlaps
from foredge.emit.plan_drawings import all_drawings
from foredge.picture.book import book_picture
from foredge.picture.colours import colour_of, find, written
from foredge.picture.sheet import HEIGHT, WIDTH

LARGEST = 400_000
DAYBOOK = next(run for run in DEMOS if "daybook" in run.spec and run.variant is None)


def picture(run):
    (drawing,) = book_picture(compiled(run))
    return drawing


def colours(drawing) -> set[str]:
    return {item.colour for item in drawing.items if isinstance(item, Shape)}


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_it_is_the_first_drawing_small_and_within_a_sheet(run) -> None:
    drawing = picture(run)
    assert all_drawings(compiled(run))[0] is drawing
    assert drawing.width <= WIDTH + 1 and drawing.height <= HEIGHT + 1
    assert overlaps(drawing) == []
    content = to_svg(drawing)
    assert len(content) < LARGEST
    names = {element.tag.rpartition("}")[2] for element in ElementTree.fromstring(content).iter()}
    assert names == {"svg", "title", "rect", "path", "text"}


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_stages_and_parts_say_what_is_seen(run) -> None:
    looks = compiled(run).whole.looks
    assert {one.what for one in looks if isinstance(one, Inside)} >= {"block", "end-paper"}
    layers = {one.layer for one in looks if isinstance(one, Look)}
    assert {"covering", "closure"} <= layers
    covered = {one.on for one in looks if isinstance(one, Look) and one.layer == "covering"}
    assert covered == {"front", "back", "spine"}


def test_the_same_build_gives_the_same_bytes() -> None:
    first = to_svg(picture(DAYBOOK))
    (again,) = book_picture(replace(compiled(DAYBOOK)))
    assert to_svg(again) == first


def test_the_front_has_the_proportions_of_the_board() -> None:
    build = compiled(DAYBOOK)
    wide, high = (build.quantity(f"case.board.{side}").value for side in ("width", "height"))
    leather = written(colour_of(Stuff("dark brown")))
    boxes = [
        (max(x) - min(x), max(y) - min(y))
        for item in picture(DAYBOOK).items
        if isinstance(item, Shape) and item.colour == leather
        for x, y in [tuple(zip(*item.rings[0], strict=True))]
    ]
    assert any(w / h == pytest.approx(wide / high, abs=0.002) for w, h in boxes if h > 0)


def test_another_colour_on_the_shelf_is_another_picture() -> None:
    build = compiled(DAYBOOK)
    looks = tuple(
        replace(one, stuff=Stuff("scarlet")) if isinstance(one, Look) and one.layer == "covering"
        else one for one in build.whole.looks
    )  # fmt: skip
    (red,) = book_picture(replace(build, whole=replace(build.whole, looks=looks)))
    scarlet = find("scarlet")
    assert scarlet is not None
    assert written(scarlet) in colours(red) - colours(picture(DAYBOOK))


def test_relief_and_edges_are_there() -> None:
    looks = compiled(DAYBOOK).whole.looks
    assert [one.on for one in looks if isinstance(one, Raised)] == ["front"]
    assert {edge for one in looks if isinstance(one, EdgeLook) for edge in one.edges} == {
        "head",
        "tail",
        "fore-edge",
    }
    bare = tuple(one for one in looks if not isinstance(one, Raised))
    build = compiled(DAYBOOK)
    (flat,) = book_picture(replace(build, whole=replace(build.whole, looks=bare)))
    assert len(to_svg(flat)) < len(to_svg(picture(DAYBOOK))) / 2


def test_nothing_heavy_is_loaded_before_a_relief_is_painted() -> None:
    code = (
        "import sys, foredge.picture.book, foredge.picture.face, foredge.emit.plan_drawings\n"
        "print([n for n in ('numpy', 'contourpy', 'manifold3d') if n in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", code], capture_output=True, text=True, check=True,
        env={"PYTHONPATH": ":".join(sys.path)},
    )  # fmt: skip
    assert done.stdout.strip() == "[]"
