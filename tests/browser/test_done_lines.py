"""Steps ticked on the page become the ``done:`` part of the spec, and compile as such."""

from dataclasses import replace

from demo import SPECS, Run, registry
from foredge.compile import compile_spec
from foredge.emit.html_page import BenchPage
from unit.emit.sample import sample

SALTMARSH = Run("saltmarsh-tide-book.yaml")


def test_ticked_steps_give_lines_that_compile(visit, demo_pages, tmp_path) -> None:
    page = visit(demo_pages[SALTMARSH]).page
    assert page.locator("#done-copy").is_disabled()
    for place in (0, 2):
        page.locator(".whole").nth(place).check()
    lines = page.locator("#done-lines").input_value()
    spec = (SPECS / SALTMARSH.spec).read_text(encoding="utf-8")
    assert "\ndone:" not in spec
    file = tmp_path / SALTMARSH.spec
    file.write_text(f"{spec}\n{lines}", encoding="utf-8")
    build = compile_spec(str(file), registry()).build
    assert build is not None
    assert set(build.book.done) == {build.order[0].id, build.order[2].id}
    assert not set(build.book.done) & {step.operation for step in build.plan.work.steps}
    page.locator("#done-copy").click()
    assert "Copied" in page.locator("#say").inner_text() or "Selected" in (
        page.locator("#say").inner_text()
    )


def test_a_time_the_spec_gives_is_kept(visit, tmp_path) -> None:
    build = sample()
    done = {"text-block.sew": "2026-11-03 20:30"}
    place = tmp_path / "done.html"
    page_bytes = BenchPage().emit(replace(build, book=replace(build.book, done=done)))
    place.write_bytes(page_bytes["build-sheet.html"])
    page = visit(place.as_uri()).page
    assert page.locator("#done-lines").input_value() == (
        "done:\n  - {operation: text-block.sew, at: 2026-11-03 20:30}\n"
    )
    page.locator(".whole:checked").first.uncheck()
    assert page.locator("#done-lines").input_value() == ""
    assert page.locator("#done-copy").is_disabled()
