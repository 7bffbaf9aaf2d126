"""The page without a browser: one sound file, closed to everything, the same every time."""

import base64
import hashlib
import json
import re
from collections import Counter
from dataclasses import replace
from html.parser import HTMLParser

import html5lib
import pytest

from demo import DEMOS, Run, compiled
from foredge.contract import Text
from foredge.emit.html.derivations import derivations
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.work import key
from foredge.emit.html_page import BenchPage
from foredge.emit.work import step_numbers
from foredge.formula import formula
from unit.emit.sample import sample

HOSTILE = '</script><b>"&<!-- ]]> \u202e {{ 7*7 }}'
NAMESPACES = {"html": "http://www.w3.org/1999/xhtml"}
# Two things html5lib, of 2020, does not know to be allowed.
KNOWN = {"unexpected-html-element-in-foreign-content"}


def page(build) -> str:
    return BenchPage().emit(build)["build-sheet.html"].decode()


PAGES: dict[Run, str] = {}


def demo_page(run: Run) -> str:
    if run not in PAGES:
        PAGES[run] = page(compiled(run))
    return PAGES[run]


every_demo = pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")


def parsed(text: str):
    parser = html5lib.HTMLParser(namespaceHTMLElements=False)
    return parser, parser.parse(text)


@every_demo
def test_it_is_sound_html(run) -> None:
    parser, _ = parsed(demo_page(run))
    assert [fault for fault in parser.errors if fault[1] not in KNOWN] == []


@every_demo
def test_ids_are_unique_and_links_lead_somewhere(run) -> None:
    _, tree = parsed(demo_page(run))
    ids = Counter(one.attrib["id"] for one in tree.iter() if "id" in one.attrib)
    assert [name for name, times in ids.items() if times > 1] == []
    for one in tree.iter():
        for name in ("href", "for", "aria-labelledby", "aria-describedby", "data-count"):
            for goal in one.attrib.get(name, "").split():
                if goal != "data:,":
                    assert goal.removeprefix("#") in ids, (one.tag, name, goal)


@every_demo
def test_nothing_comes_from_elsewhere_and_no_handler_or_style_stands_in_a_tag(run) -> None:
    _, tree = parsed(demo_page(run))
    for one in tree.iter():
        for name, value in one.attrib.items():
            assert not str(name).startswith("on") and name not in ("style", "srcset", "action")
            assert name != "src"
            if name == "href":
                assert value.startswith("#") or value == "data:,"
        assert one.tag not in ("img", "iframe", "object", "embed", "base", "image", "use")
    style = re.search(r"<style>(.*?)</style>", demo_page(run), re.DOTALL)
    assert style is not None and not re.search(r"url\(|@import|@font-face", style[1])


def test_the_policy_vouches_for_exactly_this_style_and_script() -> None:
    text = demo_page(DEMOS[0])
    _, tree = parsed(text)
    meta = next(one for one in tree.iter("meta") if one.attrib.get("http-equiv"))
    rules = dict(part.split(" ", 1) for part in meta.attrib["content"].split("; "))
    assert rules["default-src"] == "'none'"
    for tag, rule in (("style", "style-src"), ("script", "script-src")):
        inner = re.findall(rf"<{tag}>(.*?)</{tag}>", text, re.DOTALL)
        assert len(inner) == 1
        digest = base64.b64encode(hashlib.sha256(inner[0].encode()).digest()).decode()
        assert rules[rule] == f"'sha256-{digest}'"
    assert set(rules) == {
        "default-src", "style-src", "script-src", "img-src", "base-uri", "form-action",
    }  # fmt: skip


@every_demo
def test_it_is_the_same_every_time_and_not_too_large(run) -> None:
    assert page(compiled(run)) == demo_page(run)
    assert len(demo_page(run).encode()) < 2_000_000


@every_demo
def test_every_operation_is_a_step_with_its_lines(run) -> None:
    build = compiled(run)
    _, tree = parsed(demo_page(run))
    steps = [one for one in tree.iter("article") if one.attrib.get("class") == "step"]
    assert len(steps) == len(build.order)
    for step, operation in zip(steps, build.order, strict=True):
        boxes = list(step.iter("input"))
        assert len(boxes) == len(operation.steps) + 1
        assert step_numbers(build)[operation.id] in "".join(step.itertext())


def test_a_hostile_title_is_only_words() -> None:
    text = page(sample(title=HOSTILE))
    parser, tree = parsed(text)
    assert [fault for fault in parser.errors if fault[1] not in KNOWN] == []
    shown = HOSTILE.replace("\u202e ", " ").replace("  ", " ")
    heading = "".join(next(iter(tree.iter("h1"))).itertext())
    assert heading.split() == shown.split()
    assert (
        Counter(one.tag for one in tree.iter("b"))["b"]
        == Counter(one.tag for one in parsed(page(sample()))[1].iter("b"))["b"]
    )
    assert "49" not in heading


def test_a_quantitys_words_cannot_leave_the_data() -> None:
    build = sample()
    bad = build.whole.quantities[0].named("x", label="</script><b>", rule="<!--")
    numbers = Numbers(build)
    numbers.number(bad)
    text = str(derivations(build, numbers))
    assert "<" not in text and ">" not in text
    entry = json.loads(text)[0]
    assert (entry["l"], entry["r"]) == ("</script><b>", "<!--")


@every_demo
def test_what_a_number_tells_is_what_explain_tells(run) -> None:
    """Names, rules, sources and formulas of the data against the recorded computation."""
    build = compiled(run)
    found = re.search(r'id="derivations">(.*?)</script>', demo_page(run), re.DOTALL)
    assert found is not None
    entries = json.loads(found[1])
    told = {
        (one["n"], one.get("r", ""), one.get("c", ""), _metric(one.get("f", "")))
        for one in entries
        if "n" in one
    }
    shown = [one for _, result in build.stages if result.operations for one in result.quantities]
    assert len(shown) > 50
    for one in shown:
        made = " ".join(formula(one).text.split())
        assert (one.name, one.rule, one.source, made) in told
    for one in entries:
        assert all(0 <= place < len(entries) for _, place in one.get("i", []))


def _metric(said: str | list[str]) -> str:
    return said if isinstance(said, str) else said[0]


def test_a_reading_leaves_the_ticks_where_they_are_and_other_words_do_not() -> None:
    before, after = sample(), sample(measured={"board": 3.0})
    keys = [key(operation) for operation in before.order]
    assert keys == [key(operation) for operation in after.order]
    assert len(set(keys)) == len(keys)
    first = before.order[0]
    other = replace(first, steps=(Text("Something else."), *first.steps[1:]))
    assert key(other) != keys[0]


class _Text(HTMLParser):
    """Another reader of HTML, of Python's own: the words in the order in which they stand."""

    def __init__(self) -> None:
        super().__init__()
        self.words: list[str] = []

    def handle_data(self, data: str) -> None:
        self.words.append(data)


def test_two_readers_read_the_same() -> None:
    text = page(sample(title=HOSTILE))
    reader = _Text()
    reader.feed(text)
    _, tree = parsed(text)
    assert "".join(reader.words).split() == "".join(tree.itertext()).split()
