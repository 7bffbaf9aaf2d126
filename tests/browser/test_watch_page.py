"""``foredge watch`` as a maker uses it: the page renews itself, and shows errors with places."""

import os
import re
import signal
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest

from browser_help import needed
from demo import SPECS

needed("watchfiles")

CHECKOUT = SPECS.parent
PLAIN = CHECKOUT / "tests" / "specs-valid" / "plain-journal.yaml"


@pytest.fixture
def watched(tmp_path: Path) -> Iterator[tuple[Path, str, subprocess.Popen[str]]]:
    spec = tmp_path / "journal.yaml"
    spec.write_text(PLAIN.read_text(encoding="utf-8"), encoding="utf-8")
    path = os.pathsep.join(str(CHECKOUT / part) for part in ("compiler", "plugins"))
    command = [sys.executable, "-u", "-m", "foredge", "watch", "journal.yaml"]
    process = subprocess.Popen(
        command,
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": path},
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        text=True,
    )
    assert process.stdout is not None
    first = process.stdout.readline()
    found = re.search(r"http://127\.0\.0\.1:\d+/", first)
    assert found, first
    yield spec, found[0], process
    if process.poll() is None:
        process.send_signal(signal.SIGINT)
    said, _ = process.communicate(timeout=30)
    assert process.returncode == 0, said
    assert "Traceback" not in said


def test_the_page_follows_the_spec(visit, watched) -> None:
    spec, address, _ = watched
    one = visit(address)
    page = one.page
    title = re.search(r"^title: (.+)$", spec.read_text(encoding="utf-8"), re.MULTILINE)
    assert title is not None
    page.locator("h1", has_text=title[1]).wait_for(timeout=60_000)
    page.locator(".whole").first.check()

    text = spec.read_text(encoding="utf-8")
    spec.write_text(text.replace(title[0], "titel: Wrong"), encoding="utf-8")
    panel = page.locator("#watch-problems")
    panel.wait_for(state="visible", timeout=60_000)
    assert re.search(r"journal\.yaml:\d+:1: error: .*'titel'", panel.inner_text())
    assert page.locator("h1").inner_text() == title[1]

    # As an editor does that saves beside and renames.
    beside = spec.with_suffix(".tmp")
    beside.write_text(text.replace(title[0], "title: The Second Journal"), encoding="utf-8")
    beside.replace(spec)
    page.locator("h1", has_text="The Second Journal").wait_for(timeout=60_000)
    assert not panel.is_visible()
    assert one.troubles == []


def test_a_spec_that_never_compiled_has_a_page_that_says_why(visit, watched) -> None:
    spec, address, _ = watched
    spec.write_text("foredge: 1\ntitle: [\n", encoding="utf-8")
    one = visit(address)
    panel = one.page.locator("#watch-problems")
    panel.wait_for(state="visible", timeout=60_000)
    assert re.search(r"journal\.yaml:\d+:\d+: error: ", panel.inner_text())
    assert one.troubles == []
