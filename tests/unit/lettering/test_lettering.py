"""Lettering as the stage asks for it: fit, problems, trace sheets, work."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from hypothesis import given, settings, strategies as st

import letter_fonts
from foredge.contract import Drawing, Line, OrnamentResult, Problem, Severity, Shape
from foredge.drawing.textbox import overlaps
from foredge.testing import check_plugin, check_result
from foredge_lettering.lettering import PLUGIN
from ornament_books import adorn, adorned, cased, jobs, quantity

TITLE = "{use: lettering, text: Salt and Tide}"


def lettered(item: str, **sizes: float) -> OrnamentResult:
    return adorn(adorned(item), cased(**sizes))


def said(result: OrnamentResult, severity: Severity) -> list[Problem]:
    return [problem for problem in result.work.problems if problem.severity is severity]


def rules(result: OrnamentResult) -> list[str]:
    return [problem.rule for problem in result.work.problems]


def ink(drawing: Drawing) -> tuple[float, float, float, float]:
    """Left, top, right, bottom of the letters on a sheet, mm."""
    points = [
        point
        for item in drawing.items
        if isinstance(item, Line | Shape) and item.role == "outline"
        for ring in ([item.points] if isinstance(item, Line) else item.rings)
        for point in ring
    ]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs), min(ys), max(xs), max(ys)


def test_the_plugin_keeps_its_contract() -> None:
    check_plugin(PLUGIN)
    assert PLUGIN.stage == "finishing"


@pytest.mark.parametrize(
    "item",
    [
        TITLE,
        "{use: lettering, on: spine, text: TIDE}",
        "{use: lettering, on: back, text: [One, Two], letters: script, tool: nozzle}",
        "{use: lettering, text: a long title of many words, breaks: to-fit, transfer: chalk}",
    ],
)
def test_every_number_explains_itself_and_every_operation_tells_what_to_do(item: str) -> None:
    result = lettered(item)
    assert not said(result, Severity.ERROR)
    check_result(result.work)
    assert result.done in {operation.id for operation in result.work.operations}
    assert result.may_close.value >= 72 * 3600
    assert not any(overlaps(drawing) for drawing in result.work.drawings)


def test_the_same_job_gives_the_same_result() -> None:
    book = adorned(TITLE)
    assert repr(adorn(book).work) == repr(adorn(book).work)


@given(
    width=st.floats(20, 140),
    height=st.floats(8, 200),
    align=st.sampled_from(["left", "centre", "right"]),
)
@settings(max_examples=25, deadline=None)
def test_the_largest_letters_stay_in_their_box_and_one_step_more_does_not(
    width: float, height: float, align: str
) -> None:
    box = f"box: {{width: {width:.2f} mm, height: {height:.2f} mm}}, align: {align}"
    result = lettered(f"{{use: lettering, text: Salt, {box}}}")
    if said(result, Severity.ERROR):
        assert min(width, height) < 12
        return
    high, stroke = quantity(result, "height"), quantity(result, "stroke")
    left, top, right, bottom = ink(result.work.drawings[0])
    assert right - left + stroke <= width + 0.02
    assert bottom - top + stroke <= height + 0.02
    more = f"{{use: lettering, text: Salt, height: {high + 0.5:.1f} mm, {box}}}"
    assert "lettering-does-not-fit" in rules(lettered(more))


def test_alignment_moves_the_ink_to_its_side_of_the_box() -> None:
    box = "box: {x: 20 mm, y: 30 mm, width: 100 mm, height: 60 mm}, height: 8 mm"
    sides = {
        align: ink(
            lettered(f"{{use: lettering, text: Salt, align: {align}, {box}}}").work.drawings[0]
        )
        for align in ("left", "centre", "right")
    }
    left, half = 15.0 + 20.0, 0.75  # the sheet's margin and the box's x; half a marker's line
    assert sides["left"][0] == pytest.approx(left + half)
    assert sides["right"][2] == pytest.approx(left + 100 - half)
    assert (sides["centre"][0] + sides["centre"][2]) / 2 == pytest.approx(left + 50)


def test_x_runs_away_from_the_spine_on_the_back_too() -> None:
    box = "box: {x: 10 mm, width: 60 mm, height: 40 mm}, align: left, height: 8 mm"
    front = ink(lettered(f"{{use: lettering, text: S, on: front, {box}}}").work.drawings[0])
    back = ink(lettered(f"{{use: lettering, text: S, on: back, {box}}}").work.drawings[0])
    assert back[0] - front[0] == pytest.approx(147 - 2 * 10 - 60)


def test_the_mirrored_sheet_is_the_mirror() -> None:
    plain, mirrored = lettered(TITLE).work.drawings
    assert mirrored.name == f"{plain.name}-mirrored"
    assert plain.true_scale and mirrored.true_scale
    a, b = ink(plain), ink(mirrored)
    assert (b[0], b[2]) == pytest.approx((plain.width - a[2], plain.width - a[0]))
    assert (b[1], b[3]) == pytest.approx((a[1], a[3]))


@pytest.mark.parametrize(("direction", "turn"), [("down", 1), ("up", -1)])
def test_a_spine_title_runs_along_the_spine(direction: str, turn: int) -> None:
    """The leg of a capital L is its last stroke: it points the way the title is read."""
    result = lettered(f"{{use: lettering, on: spine, text: L, direction: {direction}}}")
    lines = [
        i for i in result.work.drawings[0].items if isinstance(i, Line) and i.role == "outline"
    ]
    start, end = lines[-1].points[0], lines[-1].points[-1]
    assert end[0] == pytest.approx(start[0])
    assert (end[1] - start[1]) * turn > 0


def test_spine_letters_are_no_higher_than_their_share_of_the_spine() -> None:
    assert quantity(lettered("{use: lettering, on: spine, text: TI}"), "height") == 12
    assert (
        quantity(lettered("{use: lettering, on: spine, text: TI}", spine__width=15), "height") == 9
    )


def test_a_text_that_cannot_fit_says_by_how_much_and_what_fits() -> None:
    result = lettered("{use: lettering, text: [Salt, and the Tide], height: 30 mm}")
    (problem,) = said(result, Severity.ERROR)
    assert problem.rule == "lettering-does-not-fit"
    assert "line 2, 'and the Tide', is" in problem.text
    long, over = map(float, re.findall(r"([\d.]+) mm (?:long|more)", problem.text))
    assert long - over == pytest.approx(0.7 * 147, abs=0.11)
    most = re.match(r"At ([\d.]+) mm it fits", problem.remedy)
    assert most is not None
    fitting = "{{use: lettering, text: [Salt, and the Tide], height: {} mm}}"
    assert not said(lettered(fitting.format(most[1])), Severity.ERROR)
    assert said(lettered(fitting.format(float(most[1]) + 0.5)), Severity.ERROR)
    assert result.done == "" and result.work.operations == ()


def test_too_many_lines_are_told_apart_from_long_ones() -> None:
    result = lettered("{use: lettering, text: [I, I, I, I], height: 20 mm}")
    assert "the 4 lines take" in said(result, Severity.ERROR)[0].text


def test_no_letters_are_that_small() -> None:
    result = lettered("{use: lettering, text: Salt and Tide, box: {width: 2 mm}}")
    assert "no letters are that small" in said(result, Severity.ERROR)[0].text


@pytest.mark.parametrize("text", ['""', '"   "', '["", " "]', "[]"])
def test_an_empty_text_is_an_error(text: str) -> None:
    assert rules(lettered(f"{{use: lettering, text: {text}}}")) == ["lettering-empty"]


def test_a_missing_letter_is_named_with_its_line() -> None:
    result = lettered('{use: lettering, text: ["Marée", "haute"]}')
    (problem,) = said(result, Severity.ERROR)
    assert problem.rule == "lettering-missing-letter"
    assert "no 'é' (U+00E9), which stands in line 1" in problem.text


def test_a_box_over_the_edge_is_an_error_and_one_on_it_is_not() -> None:
    over = lettered("{use: lettering, text: S, box: {x: 100 mm, width: 60 mm}}")
    assert rules(over) == ["lettering-box-outside"] and "13.0 mm" in over.work.problems[0].text
    assert not rules(
        lettered(
            "{use: lettering, text: S, box: {x: 87 mm, width: 60 mm}, stroke: 4 mm, height: 20 mm}"
        )
    )


def test_a_box_into_the_tail_of_the_spine_is_noted() -> None:
    spine = "{{use: lettering, on: spine, text: TIDE, box: {{y: 10 mm, height: {} mm}}}}"
    assert "spine-tail-free" in rules(lettered(spine.format(180)))
    assert "spine-tail-free" not in rules(lettered(spine.format(171)))


@pytest.mark.parametrize(
    ("options", "rule"),
    [
        ("tool: brush, height: 10 mm", "letter-small"),
        ("tool: brush, height: 12 mm", ""),
        ("stroke: 0.5 mm, height: 5 mm", "letter-stroke-fine"),
        ("stroke: 0.7 mm, height: 5 mm", ""),
        ("tool: fine-brush, height: 10.5 mm", "letter-thin"),
        ("tool: fine-brush, height: 10 mm", ""),
    ],
)
def test_what_a_tool_draws_badly_is_told_and_stops_nothing(options: str, rule: str) -> None:
    result = lettered(f"{{use: lettering, text: Salt, {options}}}")
    assert rules(result) == ([rule] if rule else [])
    assert result.work.operations


def test_line_area_and_paint_follow_from_each_other() -> None:
    result = lettered("{use: lettering, text: I, height: 20 mm, tool: brush, coats: 2}")
    assert quantity(result, "line") == pytest.approx(20)
    assert quantity(result, "area") == pytest.approx(20 * 3)
    # base coat: 108 ml/m2, twice, and 30 % spare
    assert quantity(result, "paint") == pytest.approx(60 * 108e-3 * 2 * 1.3)


def test_a_nozzle_lays_a_half_round_bead() -> None:
    result = lettered("{use: lettering, text: I, height: 20 mm, tool: nozzle, stroke: 4 mm}")
    assert result.thickness.value == pytest.approx(2)
    assert quantity(result, "paint") == pytest.approx(20 * 3.14159265 * 4**2 / 8 * 1.3)


def test_the_gates_of_the_panel_are_asked_for_before_the_sheet_is_printed() -> None:
    upstream = cased()
    book = adorned(TITLE)
    width = book.measured(upstream.quantity("case.board.width"), "G2", "block.width", "block width")
    (_, result), *_ = upstream.results
    kept = [q for q in result.quantities if q.name != "case.board.width"]
    gated = type(result)(
        quantities=(*kept, width.named("case.board.width", rule="r", source="s")),
        facts=result.facts,
    )
    made = adorn(book, type(upstream)((("case", gated),)))
    assert made.work.operations[0].stops_for == ("G2",)


def test_operations_follow_each_other_and_the_coats_under_them() -> None:
    printing, tracing, painting, protecting = lettered(TITLE).work.operations
    assert printing.after == ("case.cover",)
    assert tracing.after == (printing.id, "case.cover")
    assert painting.after == (tracing.id,) and protecting.after == (painting.id,)


@pytest.mark.parametrize(("coat", "own"), [("wax", False), ("wash", True)])
def test_letters_are_protected_unless_the_whole_book_is(coat: str, own: bool) -> None:
    result = adorn(adorned(TITLE, more=f"finishing:\n  - {{use: {coat}}}\n"))
    assert result.done == f"finishing.{'protect' if own else 'letter'}-lettering"


def test_a_second_lettering_has_names_of_its_own() -> None:
    book = adorned(TITLE, TITLE, "{use: lettering, id: lettering-2, text: T, on: spine}")
    first, second, third = (job.part.plugin.adorn(job).work for job in jobs(book))
    for attribute in ("quantities", "operations", "drawings"):
        names = [
            getattr(one, "name", None) or one.id
            for work in (first, second, third)
            for one in getattr(work, attribute)
        ]
        assert len(names) == len(set(names))


@pytest.fixture
def shelf(tmp_path: Path) -> Path:
    (tmp_path / "fonts").mkdir()
    (tmp_path / "fonts" / "prop.ttf").write_bytes(letter_fonts.ttf())
    (tmp_path / "fonts" / "prop.otf").write_bytes(letter_fonts.otf())
    (tmp_path / "broken.ttf").write_bytes(letter_fonts.ttf()[:200])
    return tmp_path


@pytest.mark.parametrize("file", ["prop.ttf", "prop.otf"])
def test_a_font_of_ones_own_is_set_filled(shelf: Path, file: str) -> None:
    book = adorned(
        f"{{use: lettering, text: HOgé, font: fonts/{file}, height: 20 mm}}", folder=shelf
    )
    result = adorn(book)
    check_result(result.work)
    assert not result.work.problems
    shapes = [item for item in result.work.drawings[0].items if isinstance(item, Shape)]
    assert len(shapes) == 4 and len(shapes[1].rings) == 2
    left, top, right, bottom = ink(result.work.drawings[0])
    # ink from the H's stem at 50 to the e's at 460, after advances of 700 + 760 + 560
    assert right - left == pytest.approx((2020 + 460 - 50) / 700 * 20)
    assert bottom - top == pytest.approx((720 + 200) / 700 * 20, rel=1e-3)


def test_a_font_without_a_letter_names_the_file(shelf: Path) -> None:
    result = adorn(adorned("{use: lettering, text: Hx, font: fonts/prop.ttf}", folder=shelf))
    assert "'fonts/prop.ttf' has no 'x' (U+0078)" in result.work.problems[0].text


def test_an_unreadable_font_is_an_error_that_says_so(shelf: Path) -> None:
    result = adorn(adorned("{use: lettering, text: H, font: broken.ttf}", folder=shelf))
    (problem,) = result.work.problems
    assert problem.severity is Severity.ERROR and problem.rule == "font-unreadable"
    assert "'broken.ttf' cannot be read as a font" in problem.text


def test_a_font_that_is_not_there_is_told(shelf: Path) -> None:
    with pytest.raises(AssertionError, match=r"no font file 'no\.ttf' beside the spec"):
        adorned("{use: lettering, text: T, font: no.ttf}", folder=shelf)
