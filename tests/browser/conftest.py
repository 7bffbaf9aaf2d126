"""Chromium, driven by Playwright, looking at pages on the disk.

Without a Chromium these tests are skipped, unless ``FOREDGE_BROWSER=required`` is set: then
they fail. ``FOREDGE_CHROMIUM`` may name another browser of the family.
"""

import os
import shutil
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from browser_help import needed, without
from demo import Run, compiled
from foredge.emit.html_page import BenchPage

NAMES = ("chromium", "chromium-browser", "google-chrome")
# Root has no sandbox in a container; the rest keeps the browser from calling home.
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)


def chromium() -> str | None:
    """Where the browser is."""
    named = os.environ.get("FOREDGE_CHROMIUM")
    return named or next((found for name in NAMES if (found := shutil.which(name))), None)


@pytest.fixture(scope="session")
def browser() -> Iterator[object]:
    """One browser for all tests; each opens its own context."""
    found = chromium()
    if found is None:
        without("there is no Chromium; on Debian: apt-get install chromium")
    api = needed("playwright.sync_api")
    with api.sync_playwright() as driver:
        opened = driver.chromium.launch(executable_path=found, args=list(FLAGS))
        yield opened
        opened.close()


class Visit:
    """A page in a fresh profile; ``troubles`` holds what the console and the network said."""

    def __init__(self, browser, url: str, script: str = "", **options: object) -> None:
        self.context = browser.new_context(
            **{"viewport": {"width": 1280, "height": 900}, **options}
        )
        self.page = self.context.new_page()
        self.troubles: list[str] = []
        self.url = url
        own = url.rpartition("/")[0]
        self.page.on("console", lambda said: self._heard(said.type, said.text))
        self.page.on("pageerror", lambda fault: self.troubles.append(str(fault)))
        self.page.on(
            "request",
            lambda asked: (
                None if asked.url.startswith((own, "data:")) else self._heard("error", asked.url)
            ),
        )
        if script:
            self.page.add_init_script(script)
        self.page.goto(url)

    def _heard(self, kind: str, words: str) -> None:
        if kind in ("error", "warning"):
            self.troubles.append(words)

    def _asked(self, url: str, own: str) -> None:
        if not url.startswith((own, "data:")):
            self.troubles.append(url)

    def close(self) -> None:
        self.context.close()


@pytest.fixture
def visit(browser) -> Iterator[Callable[..., Visit]]:
    """Opens pages, and closes them after the test."""
    opened: list[Visit] = []

    def open_page(url: str, **options: object) -> Visit:
        opened.append(Visit(browser, url, **options))
        return opened[-1]

    yield open_page
    for one in opened:
        one.close()


class Pages(dict[Run, str]):
    """The page of a demo, as an address on the disk; made when it is first asked for."""

    def __init__(self, folder: Path) -> None:
        self._folder = folder

    def __missing__(self, run: Run) -> str:
        build = compiled(run)
        place = self._folder / f"{build.name}.html"
        place.write_bytes(BenchPage().emit(build)["build-sheet.html"])
        self[run] = place.as_uri()
        return self[run]


@pytest.fixture(scope="session")
def demo_pages(tmp_path_factory: pytest.TempPathFactory) -> Pages:
    """The pages of all demos."""
    return Pages(tmp_path_factory.mktemp("pages"))
