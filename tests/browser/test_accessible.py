"""No fault that axe-core finds, in any state of the page; and a keyboard alone is enough.

axe-core 4.12 by Deque Systems (MPL 2.0), as axe-playwright-python carries it: rules for WCAG
2.2 A and AA, and good practice.
"""

import pytest

from browser_help import needed
from demo import Run

axe = needed("axe_playwright_python.sync_playwright")

SALTMARSH = Run("saltmarsh-tide-book.yaml")


def faults(page) -> list[str]:
    found = axe.Axe().run(page).response["violations"]
    return [
        f"{one['impact']} {one['id']}: {one['nodes'][0]['html'][:120]} ({len(one['nodes'])})"
        for one in found
    ]


LOOKS = (
    (Run("saltmarsh-tide-book.yaml"), "light", 1280),
    (Run("orchard-almanac.yaml"), "dark", 360),
    (Run("clockmakers-daybook.yaml"), "dark", 1280),
    (Run("clockmakers-daybook.yaml", "pocket"), "light", 360),
)


@pytest.mark.parametrize(("run", "look", "width"), LOOKS, ids=str)
def test_the_page(visit, demo_pages, run, look, width) -> None:
    page = visit(demo_pages[run], color_scheme=look, viewport={"width": width, "height": 800}).page
    page.evaluate("document.querySelectorAll('details').forEach(one => { one.open = true; })")
    page.locator(".whole").first.check()
    assert faults(page) == []


@pytest.mark.parametrize("look", ["light", "dark"])
def test_the_dialogs(visit, demo_pages, look) -> None:
    page = visit(demo_pages[SALTMARSH], color_scheme=look).page
    page.locator(".lines-of-work button.n").first.click()
    assert faults(page) == []
    page.keyboard.press("Escape")
    page.locator(".enlarge").first.click()
    assert faults(page) == []
    page.keyboard.press("Escape")
    page.locator("#readings-form input[type=text]").first.fill("x")
    assert faults(page) == []


def test_headings_follow_one_another(visit, demo_pages) -> None:
    page = visit(demo_pages[SALTMARSH]).page
    levels = page.locator("main :is(h1, h2, h3, h4)").evaluate_all(
        "all => all.map(one => Number(one.tagName[1]))"
    )
    assert levels[0] == 2 and set(levels) == {2, 3}
    assert page.locator("h1").count() == 1
    for landmark in ("header", "nav", "main", "footer"):
        assert page.locator(landmark).count() == 1


def test_the_keyboard_is_enough(visit, demo_pages) -> None:
    page = visit(demo_pages[SALTMARSH]).page
    where = "document.activeElement.className || document.activeElement.id"
    page.keyboard.press("Tab")
    assert page.evaluate(where) == "skip"
    page.keyboard.press("Enter")
    assert page.evaluate("document.activeElement.id") == "main"
    page.locator(".whole").first.focus()
    page.keyboard.press("Space")
    assert page.locator(".whole").first.is_checked()
    number = page.locator(".lines-of-work button.n").first
    number.focus()
    outline = number.evaluate("one => getComputedStyle(one).outlineStyle")
    assert outline == "solid"
    page.keyboard.press("Enter")
    assert page.locator("#why").is_visible()
    for _ in range(40):
        page.keyboard.press("Tab")
        assert page.evaluate(
            "document.activeElement.closest('#why') !== null"
            " || document.activeElement === document.body"
        )
    page.keyboard.press("Escape")
    assert number.evaluate("one => one === document.activeElement")
    page.locator("input[name=units]").first.focus()
    page.keyboard.press("ArrowRight")
    assert page.evaluate("document.documentElement.dataset.units") == "imperial"


def test_a_tick_box_is_called_by_its_line(visit, demo_pages) -> None:
    page = visit(demo_pages[SALTMARSH]).page
    line = page.locator(".lines-of-work li").first
    text = line.locator("span").first.inner_text()
    assert page.get_by_role("checkbox", name=text, exact=True).count() == 1
    assert page.get_by_role("checkbox", name="Step 1.1 done").count() == 1
