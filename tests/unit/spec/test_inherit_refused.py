"""Reuse: what cannot be extended, and what is said of it."""

from __future__ import annotations

from pathlib import Path

import pytest

from foredge.problem import Span
from foredge.spec.inherit import load_spec
from foredge.spec.yaml_reader import Document, read_file

BASE = """\
title: Base
copies: 1
text_block:
  leaf: {width: 150 mm, height: 205 mm}
  edges: [plain, torn]
  sewing: {use: tapes, thread: linen, tapes: 3}
case:
  square: 5 mm
  spine: {use: card, thickness: 0.5 mm}
measured: {board: 3.1 mm}
done: [fold]
variants:
  pocket:
    text_block: {leaf: {width: 100 mm}, edges: null}
    measured: {board: 2 mm}
  folio: {copies: 2}
"""
CHILD = """\
extends: base.yaml
title: Child
text_block:
  edges: [painted]
  sewing: {use: link-stitch, needle: curved}
case:
  square: null
  nothing: null
  spine: {thickness: 0.8 mm}
variants:
  pocket: {title: Pocket, text_block: {leaf: {height: 140 mm}}}
  folio: null
"""


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A working folder with ``specs/base.yaml`` and ``specs/child.yaml``."""
    monkeypatch.chdir(tmp_path)
    write("specs/base.yaml", BASE)
    write("specs/child.yaml", CHILD)
    return tmp_path


def write(name: str, text: str) -> None:
    Path(name).parent.mkdir(parents=True, exist_ok=True)
    Path(name).write_text(text, encoding="utf-8")


def said(document: Document) -> list[str]:
    return [str(problem) for problem in document.problems]


# What cannot be extended -----------------------------------------------------------------


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "title: x\nextends: gone.yaml",
            "specs/x.yaml:2:10: error: there is no file 'specs/gone.yaml'. [file-not-found]",
        ),
        (
            "extends: sub",
            "specs/x.yaml:1:10: error: 'specs/sub' is a folder, not a file. [path-is-a-folder]",
        ),
        (
            "extends: x.yaml",
            "specs/x.yaml:1:10: error: the specs extend each other in a circle: specs/x.yaml ->"
            " specs/x.yaml. [extends-cycle]",
        ),
        (
            "extends: sub/../x.yaml",
            "specs/x.yaml:1:10: error: the specs extend each other in a circle: specs/x.yaml ->"
            " specs/x.yaml. [extends-cycle]",
        ),
        (
            "extends: one.yaml",
            "specs/two.yaml:1:10: error: the specs extend each other in a circle: specs/one.yaml"
            " -> specs/two.yaml -> specs/one.yaml. [extends-cycle]",
        ),
        (
            "extends: ../outside.yaml",
            "specs/x.yaml:1:10: error: '../outside.yaml' lies outside the folder of the spec;"
            " name it on the command line too. [extends-outside]",
        ),
        (
            "extends: /etc/hostname",
            "specs/x.yaml:1:10: error: '/etc/hostname' lies outside the folder of the spec; name"
            " it on the command line too. [extends-outside]",
        ),
        (
            "extends: link.yaml",
            "specs/x.yaml:1:10: error: 'link.yaml' lies outside the folder of the spec; name it"
            " on the command line too. [extends-outside]",
        ),
        (
            "extends: linked/outside.yaml",
            "specs/x.yaml:1:10: error: 'linked/outside.yaml' lies outside the folder of the spec;"
            " name it on the command line too. [extends-outside]",
        ),
        (
            "extends: sub/reaches.yaml",
            "specs/sub/reaches.yaml:2:10: error: '../../outside.yaml' lies outside the folder of"
            " the spec; name it on the command line too. [extends-outside]",
        ),
        (
            "extends: [base.yaml]",
            "specs/x.yaml:1:10: error: extends takes the path of one spec, such as 'base.yaml'."
            " [extends-not-a-path]",
        ),
        (
            "extends: ''",
            "specs/x.yaml:1:10: error: extends takes the path of one spec, such as 'base.yaml'."
            " [extends-not-a-path]",
        ),
        (
            "extends: list.yaml",
            "specs/list.yaml:1:1: error: a spec is made of keys and values, such as 'title: ...'."
            " [spec-not-a-mapping]",
        ),
        (
            "extends: tab.yaml",
            "specs/tab.yaml:2:1: error: this line is indented with a tab; use spaces. [tab-indent]",
        ),
    ],
)
def test_mistakes(here: Path, text: str, expected: str) -> None:
    write("outside.yaml", "title: outside")
    write("specs/one.yaml", "extends: two.yaml")
    write("specs/two.yaml", "extends: one.yaml")
    write("specs/list.yaml", "- a")
    write("specs/tab.yaml", "a:\n\tb: 1")
    write("specs/sub/reaches.yaml", "title: r\nextends: ../../outside.yaml")
    (here / "specs/link.yaml").symlink_to(here / "outside.yaml")
    (here / "specs/linked").symlink_to(here)
    write("specs/x.yaml", text)
    document = load_spec("specs/x.yaml")
    assert said(document) == [expected]
    assert document.data is None


def test_loops_of_links_and_odd_names(here: Path) -> None:
    (here / "specs/loop.yaml").symlink_to(here / "specs/loop.yaml")
    for name in ("loop.yaml", '"a\\0b"', "x" * 300):
        write("specs/x.yaml", f"extends: {name}")
        document = load_spec("specs/x.yaml")
        assert [p.span for p in document.problems] == [Span("specs/x.yaml", 1, 10)]
        assert document.data is None
    assert load_spec("specs/loop.yaml").data is None
    assert load_spec("a\0b").data is None


def test_a_file_named_on_the_command_line_may_lie_elsewhere(here: Path) -> None:
    write("outside.yaml", "title: outside")
    write("specs/x.yaml", "extends: ../outside.yaml")
    for allowed in ("outside.yaml", "specs/../outside.yaml", str(here / "outside.yaml")):
        document = load_spec("specs/x.yaml", allow=[allowed])
        assert said(document) == []
        assert document.data == {"title": "outside"}
        assert document.positions.of(("title",)) == Span("outside.yaml", 1, 8)
    assert load_spec("specs/x.yaml", allow=["other.yaml"]).data is None


@pytest.mark.usefixtures("here")
def test_a_chain_without_end_is_cut() -> None:
    for number in range(30):
        write(f"specs/n{number}.yaml", f"extends: n{number + 1}.yaml")
    assert said(load_spec("specs/n0.yaml")) == [
        "specs/n19.yaml:1:10: error: more than 20 specs extend one another. [extends-too-deep]"
    ]


def test_the_spec_itself_may_be_missing_or_no_spec(here: Path) -> None:
    assert said(load_spec("specs/none.yaml")) == [
        "specs/none.yaml:1:1: error: there is no file 'specs/none.yaml'. [file-not-found]"
    ]
    assert said(load_spec("specs")) == [
        "specs:1:1: error: 'specs' is a folder, not a file. [path-is-a-folder]"
    ]
    write("specs/x.yaml", "tide")
    assert said(load_spec("./specs/x.yaml")) == [
        "./specs/x.yaml:1:1: error: a spec is made of keys and values, such as 'title: ...'."
        " [spec-not-a-mapping]"
    ]
    absolute = str(here / "specs/child.yaml")
    assert load_spec(absolute).positions.of(("copies",)).file == str(here / "specs/base.yaml")


@pytest.mark.usefixtures("here")
def test_problems_of_every_file_are_told() -> None:
    write("specs/base.yaml", "title: a\ntitle: b\nsquare: 5 mm")
    write("specs/x.yaml", "extends: base.yaml\ncopies: .nan\ncopies: 2")
    document = load_spec("specs/x.yaml")
    assert [str(problem.span) for problem in document.problems] == [
        "specs/x.yaml:2:9",
        "specs/x.yaml:3:1",
        "specs/base.yaml:2:1",
    ]
    assert document.data == {"title": "a", "square": "5 mm", "copies": ".nan"}


@pytest.mark.usefixtures("here")
def test_the_reader_may_be_another() -> None:
    opened = []

    def read(path: Path, shown_as: str) -> Document:
        opened.append(shown_as)
        return read_file(path, shown_as)

    load_spec("specs/child.yaml", read=read)
    assert opened == ["specs/child.yaml", "specs/base.yaml"]
