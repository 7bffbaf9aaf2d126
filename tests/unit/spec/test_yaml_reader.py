"""The reader: plain data, a place for every path, one clear message a mistake."""

from __future__ import annotations

import pytest

from foredge.problem import Span
from foredge.spec.yaml_reader import Document, read_yaml


def said(document: Document) -> list[str]:
    return [str(problem) for problem in document.problems]


def reads(text: str) -> object:
    document = read_yaml(text, "f")
    assert said(document) == []
    return document.data


# Scalars ---------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    ["no", "yes", "on", "off", "y", "12:30", "90:00", "010", "08", "1_000", "2024-01-02", "=",
     "00.5", "1e", "+", ".", "0b1", "tRue", "nULL", "7 in", '7"', "3/4", "½ in", "5'", "1.5.2"],
)  # fmt: skip
def test_what_older_yaml_would_turn_stays_text(text: str) -> None:
    assert reads(f"k: {text}") == {"k": text}
    assert reads(f"{text}: v") == {text: "v"}


@pytest.mark.parametrize(
    ("text", "value"),
    [("true", True), ("FALSE", False), ("null", None), ("~", None), ("", None), ("12", 12),
     ("-3", -3), ("+5", 5), ("0", 0), ("0x1F", 31), ("0o17", 15), ("1e3", 1000.0), ("0.10", 0.1),
     (".5", 0.5), ("-1.5E-2", -0.015), ("7.", 7.0), ("'12'", "12"), ('"true"', "true"),
     ("!!str 12", "12"), ("!!int 12", 12), ("!!float 2", 2.0)],
)  # fmt: skip
def test_core_scalars(text: str, value: object) -> None:
    data = reads(f"k: {text}")
    assert data == {"k": value}
    assert isinstance(data, dict)
    assert type(data["k"]) is type(value)


def test_a_text_alone_and_a_list_are_documents_too() -> None:
    assert reads("tide") == "tide"
    assert reads("- a\n- b") == ["a", "b"]


# Positions -------------------------------------------------------------------------------

SPEC = """\
title: Tide
text_block:
  leaf: {width: 150 mm, height: 205 mm}
  edges:
    - plain
    - use: torn
"""


@pytest.mark.parametrize(
    ("path", "on_key", "place"),
    [
        ((), False, (1, 1)),
        (("title",), False, (1, 8)),
        (("title",), True, (1, 1)),
        (("text_block",), False, (3, 3)),
        (("text_block",), True, (2, 1)),
        (("text_block", "leaf", "height"), False, (3, 33)),
        (("text_block", "leaf", "height"), True, (3, 25)),
        (("text_block", "edges", 1), False, (6, 7)),
        (("text_block", "edges", 1, "use"), False, (6, 12)),
        # unknown: the key of the deepest part that is known
        (("text_block", "leaf", "depth"), False, (3, 3)),
        (("text_block", "leaf", "depth"), True, (3, 3)),
        (("text_block", "edges", 1, "x", "y"), False, (6, 7)),
        (("text_block", "edges", 7), False, (4, 3)),
        (("case", "square"), True, (1, 1)),
    ],
)
def test_positions(path: tuple[str | int, ...], on_key: bool, place: tuple[int, int]) -> None:
    assert read_yaml(SPEC, "s.yaml").positions.of(path, on_key) == Span("s.yaml", *place)


def test_an_alias_shows_its_anchor_as_value_and_its_use_as_key() -> None:
    positions = read_yaml("a: &x {p: 1}\nb: *x\nc: [0, *x]", "f").positions
    assert positions.of(("b", "p")) == Span("f", 1, 11)
    assert positions.of(("b",), on_key=True) == Span("f", 2, 1)
    assert positions.of(("c", 1), on_key=True) == Span("f", 3, 8)
    assert positions.of(("c", 1)) == Span("f", 1, 4)


def test_columns_count_characters_and_a_mark_of_byte_order_is_none() -> None:
    document = read_yaml("\ufeffé: {ü: ½ in}\r\nb: 2", "f")
    assert document.data == {"é": {"ü": "½ in"}, "b": 2}
    assert document.positions.of(("é", "ü")) == Span("f", 1, 8)
    assert document.positions.of(("b",)) == Span("f", 2, 4)


# Merge keys ------------------------------------------------------------------------------


def test_merge_keys_are_followed_as_deep_as_they_go() -> None:
    text = """\
x: &x {p: 1, q: 2}
y: &y {<<: *x, q: 3}
z: {<<: [*y, {p: 9, r: 9}], s: 4}
"""
    document = read_yaml(text, "f")
    assert said(document) == []
    assert document.data["z"] == {"p": 1, "q": 3, "r": 9, "s": 4}
    assert document.positions.of(("z", "p")) == Span("f", 1, 11)
    assert document.positions.of(("z", "q")) == Span("f", 2, 19)


def test_a_quoted_merge_sign_is_a_key() -> None:
    assert reads("'<<': 1") == {"<<": 1}


# Mistakes: exact place and text ----------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "a: 1\nb: 2\na: 3\nc: {d: 1, d: 2}\nb: 4",
            [
                "f:3:1: error: the key 'a' stands on line 1 and again on line 3; keep one."
                " [duplicate-key]",
                "f:4:11: error: the key 'd' stands twice on line 4; keep one. [duplicate-key]",
                "f:5:1: error: the key 'b' stands on line 2 and again on line 5; keep one."
                " [duplicate-key]",
            ],
        ),
        (
            "z: {<<: {a: 1}, <<: {b: 2}}",
            ["f:1:17: error: the key '<<' stands twice on line 1; keep one. [duplicate-key]"],
        ),
        (
            "12: a\ntrue: b\n[x]: c\n? {y: z}\n: d",
            [
                'f:1:1: error: the key 12 is not text; write it in quotes: "12". [key-not-text]',
                'f:2:1: error: the key true is not text; write it in quotes: "true".'
                " [key-not-text]",
                "f:3:1: error: a key must be plain text. [key-not-text]",
                "f:4:3: error: a key must be plain text. [key-not-text]",
            ],
        ),
        ("?\n: d", ["f:1:2: error: a key is missing before this ':'. [key-not-text]"]),
        (
            "a: !!set {x}\nb: !mine 3\nc: !!binary abc\nd: !!timestamp 2024-01-02",
            [
                "f:1:4: error: the tag !!set is not known; leave it out. [unknown-tag]",
                "f:2:4: error: the tag !mine is not known; leave it out. [unknown-tag]",
                "f:3:4: error: the tag !!binary is not known; leave it out. [unknown-tag]",
                "f:4:4: error: the tag !!timestamp is not known; leave it out. [unknown-tag]",
            ],
        ),
        (
            "a: !!int x\nb: !!bool no",
            [
                "f:1:4: error: 'x' is not a whole number, as its tag !!int says; take the tag"
                " away. [tag-does-not-fit]",
                "f:2:4: error: 'no' is not true or false, as its tag !!bool says; take the tag"
                " away. [tag-does-not-fit]",
            ],
        ),
        (
            "a: .nan\nb: -.INF\nc: 1e400",
            [
                "f:1:4: error: '.nan' is not a number that can be measured. [number-not-finite]",
                "f:2:4: error: '-.INF' is not a number that can be measured. [number-not-finite]",
                "f:3:4: error: '1e400' is not a number that can be measured. [number-not-finite]",
            ],
        ),
        (
            "a: 99999999999999999999",
            ["f:1:4: error: a number of 20 digits is too long. [number-too-long]"],
        ),
        (
            "a: &a [1, *a]",
            ["f:1:11: error: this alias stands inside the very thing it names. [alias-in-itself]"],
        ),
        (
            "a: &a {b: {c: *a}}",
            ["f:1:15: error: this alias stands inside the very thing it names. [alias-in-itself]"],
        ),
        (
            "a: &a\n  <<: *a\n  c: d",
            ["f:2:7: error: this alias stands inside the very thing it names. [alias-in-itself]"],
        ),
        ("a: *b", ["f:1:4: error: no anchor '&b' stands above this '*b'. [unknown-alias]"]),
        (
            "a: &x 1\nb: &x 2",
            [
                "f:2:4: error: this anchor is already used on line 1; give it another name."
                " [duplicate-anchor]"
            ],
        ),
        (
            "<<: 5\na: {<<: [{}, 6]}",
            [
                "f:1:5: error: '<<' takes a mapping, or a list of mappings. [merge-of-text]",
                "f:2:14: error: '<<' takes a mapping, or a list of mappings. [merge-of-text]",
            ],
        ),
        (
            "a:\n\tb: 1",
            ["f:2:1: error: this line is indented with a tab; use spaces. [tab-indent]"],
        ),
        (
            "a:\n  b: 1\n  \tc: 1",
            ["f:3:3: error: this line is indented with a tab; use spaces. [tab-indent]"],
        ),
        ("a:\t1", ["f:1:3: error: a tab stands here; use a space. [tab-indent]"]),
        ("", ["f:1:1: error: the file is empty. [empty-file]"]),
        ("# only words\n\n", ["f:1:1: error: the file is empty. [empty-file]"]),
        ("a: 'x\nb: 1", ["f:1:4: error: this quote is never closed. [yaml-syntax]"]),
        (
            "a: [1, 2\nb: 1",
            [
                "f:1:4: error: this bracket needs a ',' or a ']' on line 2 before what follows."
                " [yaml-syntax]"
            ],
        ),
        ("a: @x", ["f:1:4: error: a value cannot begin with '@'; put it in quotes. [yaml-syntax]"]),
        (
            "because: note: x",
            [
                "f:1:14: error: a ':' too many, or a line that is not indented like its"
                " neighbours; text that holds ': ' goes in quotes. [yaml-syntax]"
            ],
        ),
        (
            'a: "7" in',
            [
                "f:1:8: error: something follows the closing quote; put the whole text in the"
                " other quotes. [yaml-syntax]"
            ],
        ),
        (
            "a:\n  b: 1\n c: 2",
            ["f:3:2: error: this line is not indented like its neighbours. [yaml-syntax]"],
        ),
        (
            "a: b\nnonsense\n",
            ["f:2:1: error: this line needs a ':' and a value, or quotes around it. [yaml-syntax]"],
        ),
        (
            "a: 1\n---\nb: 1",
            ["f:2:1: error: a second document starts here; one file holds one spec. [yaml-syntax]"],
        ),
        (
            'a: "\\ud83d"',
            [
                "f:1:4: error: an escape here makes half a character; write the character itself."
                " [forbidden-character]"
            ],
        ),
        (
            "a: 1\nb: \x07",
            [
                "f:2:4: error: the character U+0007 cannot stand in a YAML file; take it out."
                " [forbidden-character]"
            ],
        ),
    ],
)
def test_mistakes(text: str, expected: list[str]) -> None:
    assert said(read_yaml(text, "f")) == expected


def test_an_escape_beyond_unicode_is_a_problem() -> None:
    document = read_yaml('a: "\\U00110000"', "f")
    assert [(p.span.line, p.rule) for p in document.problems] == [(1, "yaml-syntax")]


def test_what_cannot_be_read_keeps_its_text_so_that_nothing_seems_missing() -> None:
    assert read_yaml("a: .nan\nb: !mine 3", "f").data == {"a": ".nan", "b": "3"}


def test_the_first_of_two_equal_keys_stands() -> None:
    assert read_yaml("a: 1\na: 2", "f").data == {"a": 1}
