"""Every mistake has one message, in plain words, at the place a maker would correct."""

from __future__ import annotations

import re

import pytest

from foredge.contract import Problem
from foredge.spec.schema import check
from foredge.spec.yaml_reader import read_yaml
from foredge.tables import load_tables
from foredge.testing import diagnostics_of, registry_of
from unit.spec.invented_plugins import REGISTRY, SPEC

READERS = ("[number-not-finite]", "[number-too-long]")  # said by the reader already


def said(old: str, new: str) -> list[str]:
    """What is said of the sample spec with one thing changed: text and rule."""
    found = [re.sub(r"^book\.yaml:\d+:\d+: error: ", "", one) for one in lines(old, new)]
    return [one for one in found if not one.endswith(READERS)]


def lines(old: str, new: str) -> list[str]:
    assert SPEC.count(old) == 1, f"{old!r} must stand in the sample once"
    return diagnostics_of(SPEC.replace(old, new), registry=REGISTRY)


def test_the_sample_is_clean() -> None:
    assert diagnostics_of(SPEC, registry=REGISTRY) == []


CASES = [
    # unknown and missing keys
    (
        "square: 1/8",
        "sqare: 1/8",
        "there is no key 'sqare' here; did you mean 'square'? [unknown-key]",
    ),
    ("trim: {head: 3 mm}", "trim: {}", "'trim' lacks 'head'. Add head: at the head. [missing-key]"),
    ("{card: paper}", "{count: 2}", "this item lacks 'card'. Add card: which card. [missing-key]"),
    (
        "trim: {head: 3 mm}",
        "trim: {head: 3 mm, gutter: 1 mm}",
        "there is no key 'gutter' here; the keys here are head. [unknown-key]",
    ),
    ("because: it is a prop", "why: it is", "'accept' lacks"),
    # use and kind
    (
        "use: wrap\n",
        "use: warp\n",
        "no covering is called 'warp'; did you mean 'wrap'? [unknown-use]",
    ),
    (
        "use: wrap\n",
        "use: 7\n",
        "no covering is called '7'; there are half and wrap. [unknown-use]",
    ),
    ("inner: {use: half,", "inner: {", "say which with use: half or wrap. [missing-use]"),
    (
        "inner: {use: half, spine: sail}",
        "inner: half",
        "a mapping is expected here, not the text 'half'. Write {use: half}. [wrong-type]",
    ),
    (
        "corners: {use: folded, tuck: 0 mm}",
        "corners: {use: foldid, tuck: 0 mm}",
        "no use is called 'foldid'; did you mean 'folded'? [unknown-use]",
    ),
    (
        "corners: {use: folded, tuck: 0 mm}",
        "corners: {}",
        "say which with use: mitred or folded. [missing-use]",
    ),
    (
        "corners: {use: folded, tuck: 0 mm}",
        "corners: {use: folded}",
        "'corners' lacks 'tuck'. Add tuck: what is tucked in. [missing-key]",
    ),
    ("{kind: thread,", "{kind: thred,", "no kind is called 'thred'; did you mean 'thread'?"),
    ("{kind: thread,", "{", "say which with kind: sheet, board, cloth, thread, tape or supply."),
    ("{kind: thread, size: 25/3}", "4", "a mapping is expected here, such as {kind: sheet, ...}"),
    # measures
    ("square: 1/8 in", "square: 5", "say the unit: 5 mm or 5 in? [no-unit]"),
    ("square: 1/8 in", "square: 0.5", "say the unit: 0.5 mm or 0.5 in? [no-unit]"),
    ("square: 1/8 in", "square: 0 mm", "'0 mm' is not above zero. [measure-not-positive]"),
    ("square: 1/8 in", "square: 5 g", "'5 g' is a mass; a length is expected, such as 180 mm."),
    ("square: 1/8 in", "square: -5 mm", "'-5 mm' is negative; a length is never below zero."),
    ("square: 1/8 in", "square: 1,5 mm", "'1,5 mm': a comma is not read; write 1.5 mm."),
    (
        "square: 1/8 in",
        "square: [1 mm]",
        "a length such as 150 mm is expected here, not a list. [wrong-type]",
    ),
    (
        "square: 1/8 in",
        "square: true",
        "a length such as 150 mm is expected here, not true. [wrong-type]",
    ),
    ("70 lb text", "70 lb", "says nothing without its basis size"),
    ("thread: 200 tex", "thread: 200 mm", "'200 mm' is a length; a thread size is expected"),
    ("tuck: 0 mm", "tuck: 0", "say the unit: 0 mm or 0 in?"),
    ("room: 18 degC", "room: 18 mm", "'18 mm' is a length; a temperature is expected"),
    # counts and numbers
    ("count: 2}", "count: 0}", "0 is not allowed: it must be at least 1. [out-of-range]"),
    ("count: 2}", "count: -1}", "-1 is not allowed: it must be at least 1. [out-of-range]"),
    ("count: 2}", "count: 2.5}", "a whole number is expected here, not the number 2.5."),
    ("count: 2}", "count: true}", "a whole number is expected here, not true. [wrong-type]"),
    (
        "count: 2}",
        'count: "2"}',
        "a whole number is expected here, not the text '2'. "
        "Write it without quotes and without leading zeros. [wrong-type]",
    ),
    ("count: 2}", "count: 010}", "not the text '010'. Write it without quotes and without leading"),
    ("count: 2}", "count: 999999}", "999999 is not allowed: it must be at most 100000."),
    ("coats: 0", "coats: 0\n    strength: 1", "1 is not allowed: it must be less than 1."),
    ("coats: 0", "coats: 0\n    damp: yes", "true or false is expected here, not the text 'yes'."),
    ("title: The Prompt Book", "title: 7", "a text is expected here, not the number 7. Put it in"),
    ("title: The Prompt Book", "title: ''", "at least 1 character must stand here; there is none."),
    # unions, by what is written
    ("trim: {head: 3 mm}", "trim: non", "'non' is not allowed here; did you mean 'none'?"),
    ("trim: {head: 3 mm}", "trim: 3", "a text or a mapping is expected here, not the number 3."),
    ("trim: {head: 3 mm}", "trim: {head: 3}", "say the unit: 3 mm or 3 in?"),
    # names under stock, rows of tables
    ("material: sail", "material: sale", "there is no 'sale' under stock; did you mean 'sail'?"),
    (
        "material: sail",
        "material: card",
        "'card' is a board under stock; a cloth is needed here. [wrong-stock-kind]",
    ),
    (
        "{card: paper}",
        "{card: thread}",
        "'thread' is a thread under stock; a board or a sheet is needed here.",
    ),
    (
        "glue: pva",
        "glue: pwa",
        "the reference table 'adhesives' has no 'pwa'; did you mean 'pva'? [unknown-row]",
    ),
    (
        "  thread: {kind",
        "  Waxed Thread: {kind",
        "the name 'Waxed Thread' is not made of",
    ),
    # the envelope
    ("foredge: 1", "foredge: 2", "the number 2 is no version of the spec that is known here;"),
    ("foredge: 1\n", "", "the spec lacks 'foredge'. Add foredge: the version of the spec's form"),
    ("text_block: {}", "text_block: []", "a mapping is expected here, not a list. [wrong-type]"),
    ("text_block: {}", "text_blok: {}", "there is no key 'text_blok' here; did you mean"),
    (
        "text_block: {}",
        "text_block: {}\ndisplay: inches",
        "'inches' is not allowed here; write metric",
    ),
    ("text_block: {}", "text_block: {}\ncopies: 0", "0 is not allowed: it must be at least 1."),
    ("text_block: {}", "text_block: {}\nclosure: {use: strap}", "no plugin of kind 'closure'"),
    ("start: 2026-12-01", "start: 2026-02-30", "'2026-02-30' is not a date such as 2026-12-01."),
    ("[Mon and Thu 19:00-21:00]", "[Thurs 7 pm]", "'Thurs 7 pm' does not have the form asked for"),
    ("board: 3.1 mm", "board: 3.1 g", "'3.1 g' is a mass; a length is expected"),
    ("board: 3.1 mm", "bord: 3.1 mm", "there is no key 'bord' here; did you mean 'board'?"),
    ("done: [case.cut,", "done: [3,", "a text or a mapping is expected here, not the number 3."),
]


@pytest.mark.parametrize(("old", "new", "text"), CASES)
def test_a_mistake_has_one_message(old: str, new: str, text: str) -> None:
    found = said(old, new)
    if "because" in old:  # a key that is missing, and one that is there for it
        assert len(found) == 2
        return
    assert len(found) == 1, found
    assert text in found[0]


@pytest.mark.parametrize("scalar", [".nan", ".inf", "-.inf"])
def test_what_the_reader_refused_is_told_once(scalar: str) -> None:
    (only,) = lines("square: 1/8 in", f"square: {scalar}")
    assert only.endswith("[number-not-finite]")


def problems(text: str) -> list[Problem]:
    return check(read_yaml(text, "book.yaml").data, REGISTRY, load_tables())


@pytest.mark.parametrize(
    ("old", "new", "path", "on_key"),
    [
        ("square: 1/8 in", "square: 5", ("case", "square"), False),
        ("square: 1/8", "aquare: 1/8", ("case", "aquare"), True),
        ("{card: paper}", "{}", ("case", "covering", "layers", 1), True),
        ("trim: {head: 3 mm}", "trim: {}", ("case", "covering", "trim"), True),
        ("use: wrap\n", "use: warp\n", ("case", "covering", "use"), False),
        ("inner: {use: half,", "inner: {", ("case", "covering", "inner"), True),
        ("spine: sail}\n", "spine: sale}\n", ("case", "covering", "inner", "spine"), False),
        ("foredge: 1\n", "", (), True),
        ("  card: {kind", "  Card: {kind", ("stock", "Card"), True),
    ],
)
def test_where_a_problem_points(old: str, new: str, path: tuple[object, ...], on_key: bool) -> None:
    first = next(
        p for p in problems(SPEC.replace(old, new)) if p.rule != "unknown-stock" or "sale" in p.text
    )
    assert (first.path, first.on_key) == (path, on_key)


def test_all_problems_come_in_one_run() -> None:
    text = SPEC
    for old, new in [
        ("square: 1/8 in", "square: 5"),
        ("use: wrap\n", "use: wrap\n    colour: red\n"),
        ("glue: pva", "glue: pwa"),
        ("board: 3.1 mm", "board: 3.1"),
        ("size: 25/3", "size: 25/0"),
    ]:
        text = text.replace(old, new)
    assert len(problems(text)) == 5


@pytest.mark.parametrize("text", ["[1, 2]", "7", "text", "null", "{}"])
def test_what_is_no_spec_at_all_is_refused(text: str) -> None:
    assert problems(text)


@pytest.mark.parametrize("stock", ["[]", "7", "{a: 1, b: {kind: [x]}}", "{a: {kind: {}}}"])
def test_a_broken_shelf_does_not_break_the_names_on_it(stock: str) -> None:
    text = re.sub(r"(?s)stock:\n.*?text_block", f"stock: {stock}\ntext_block", SPEC)
    assert all(isinstance(problem, Problem) for problem in problems(text))


def test_a_stage_from_outside_has_its_own_section() -> None:
    class Extra:
        kind, name, title = "stage", "glazing", "Glazing"
        section = prefix = "glazing"
        needs: tuple[str, ...] = ()
        from unit.spec.invented_plugins import CaseOptions as options

        def run(self, book: object, upstream: object) -> None: ...

    registry = registry_of(Extra(), builtins=False)
    base = "foredge: 1\ntitle: A\ntext_block: {}\ncase: {}\n"
    assert "'glazing'" in diagnostics_of(base, registry=registry)[0]
    assert diagnostics_of(base + "glazing: {square: 1 mm}\n", registry=registry) == []
    assert len(diagnostics_of(base + "glazing: {square: 1}\n", registry=registry)) == 1
