"""Reuse: what is merged, what never is, and where each value was said."""

from __future__ import annotations

from pathlib import Path

import pytest

from foredge.problem import Span
from foredge.spec.inherit import load_spec, variant_names
from foredge.spec.yaml_reader import Document

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


# Merging ---------------------------------------------------------------------------------


@pytest.mark.usefixtures("here")
def test_a_child_over_its_base() -> None:
    document = load_spec("specs/child.yaml")
    assert said(document) == []
    assert document.data == {
        "title": "Child",
        "copies": 1,
        "text_block": {
            "leaf": {"width": "150 mm", "height": "205 mm"},
            "edges": ["painted"],
            "sewing": {"use": "link-stitch", "needle": "curved"},
        },
        "case": {"spine": {"use": "card", "thickness": "0.8 mm"}},
    }


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize(
    ("path", "on_key", "place"),
    [
        ((), False, ("specs/child.yaml", 1, 1)),
        (("title",), False, ("specs/child.yaml", 2, 8)),
        (("copies",), False, ("specs/base.yaml", 2, 9)),
        (("copies",), True, ("specs/base.yaml", 2, 1)),
        (("text_block",), True, ("specs/child.yaml", 3, 1)),
        (("text_block", "leaf", "height"), False, ("specs/base.yaml", 4, 33)),
        (("text_block", "edges", 0), False, ("specs/child.yaml", 4, 11)),
        (("text_block", "edges", 1), False, ("specs/child.yaml", 4, 3)),
        (("text_block", "sewing", "use"), False, ("specs/child.yaml", 5, 17)),
        (("text_block", "sewing", "tapes"), True, ("specs/child.yaml", 5, 3)),
        (("case", "square"), True, ("specs/child.yaml", 7, 3)),
        (("case", "spine", "use"), False, ("specs/base.yaml", 9, 16)),
        (("case", "spine", "thickness"), False, ("specs/child.yaml", 9, 22)),
        (("extends",), False, ("specs/child.yaml", 1, 10)),
        (("variants",), True, ("specs/child.yaml", 10, 1)),
        (("measured",), False, ("specs/child.yaml", 1, 1)),
    ],
)
def test_positions_stay_in_the_file_that_said_it(
    path: tuple[str | int, ...], on_key: bool, place: tuple[str, int, int]
) -> None:
    positions = load_spec("specs/child.yaml").positions
    assert positions.of(path, on_key) == Span(*place)


@pytest.mark.usefixtures("here")
def test_readings_of_a_copy_are_its_own() -> None:
    assert load_spec("specs/base.yaml").data["measured"] == {"board": "3.1 mm"}
    assert "measured" not in load_spec("specs/child.yaml").data
    write("specs/copy.yaml", "extends: child.yaml\nmeasured: {board: 3 mm}\ndone: [sew]")
    data = load_spec("specs/copy.yaml").data
    assert data["measured"] == {"board": "3 mm"}
    assert data["done"] == ["sew"]
    assert data["title"] == "Child"


@pytest.mark.usefixtures("here")
def test_a_chain_of_three_with_folders() -> None:
    write("specs/deep/er/leaf.yaml", "extends: ../mid.yaml\ntitle: Leaf")
    write("specs/deep/mid.yaml", "extends: ../child.yaml\ncopies: 3")
    write("specs/top.yaml", "extends: deep/er/leaf.yaml")
    document = load_spec("specs/top.yaml")
    assert said(document) == []
    assert (document.data["title"], document.data["copies"]) == ("Leaf", 3)
    assert document.positions.of(("copies",)) == Span("specs/deep/mid.yaml", 2, 9)
    assert document.positions.of(("case", "spine", "use")) == Span("specs/base.yaml", 9, 16)


@pytest.mark.usefixtures("here")
def test_a_null_that_unsets_nothing_is_harmless() -> None:
    write(
        "specs/n.yaml", "title: N\nmeasured: {board: , block: {height: }}\nextends:\nlist: [null]"
    )
    document = load_spec("specs/n.yaml")
    assert said(document) == []
    assert document.data == {"title": "N", "measured": {"block": {}}, "list": [None]}


@pytest.mark.usefixtures("here")
def test_a_mapping_over_a_text_and_a_text_over_a_mapping_replace() -> None:
    write("specs/r.yaml", "extends: base.yaml\ntitle: {short: R}\ncase: later")
    data = load_spec("specs/r.yaml").data
    assert data["title"] == {"short": "R"}
    assert data["case"] == "later"


# Variants --------------------------------------------------------------------------------


@pytest.mark.usefixtures("here")
def test_names_of_variants_are_inherited_and_null_takes_one_away() -> None:
    assert variant_names(load_spec("specs/base.yaml")) == ("pocket", "folio")
    assert variant_names(load_spec("specs/child.yaml")) == ("pocket",)
    write("specs/plain.yaml", "title: P\nvariants: {a: {}, b: null}")
    assert variant_names(load_spec("specs/plain.yaml")) == ("a",)


@pytest.mark.usefixtures("here")
def test_a_variant_of_both_files() -> None:
    document = load_spec("specs/child.yaml", variant="pocket")
    assert said(document) == []
    assert document.data["title"] == "Pocket"
    assert document.data["text_block"] == {
        "leaf": {"width": "100 mm", "height": "140 mm"},
        "sewing": {"use": "link-stitch", "needle": "curved"},
    }
    assert "measured" not in document.data
    of = document.positions.of
    assert of(("text_block", "leaf", "width")) == Span("specs/base.yaml", 14, 32)
    assert of(("text_block", "leaf", "height")) == Span("specs/child.yaml", 11, 55)
    assert of(("text_block", "edges"), on_key=True) == Span("specs/base.yaml", 14, 41)
    assert of(()) == Span("specs/child.yaml", 1, 1)


@pytest.mark.usefixtures("here")
def test_readings_of_the_spec_are_not_those_of_its_variant() -> None:
    assert load_spec("specs/base.yaml", variant="pocket").data["measured"] == {"board": "2 mm"}
    folio = load_spec("specs/base.yaml", variant="folio").data
    assert "measured" not in folio
    assert "done" not in folio
    assert folio["copies"] == 2


@pytest.mark.usefixtures("here")
def test_a_variant_may_be_overlaid_where_the_spec_extends_without_its_own() -> None:
    write("specs/only.yaml", "extends: base.yaml\ntitle: Only")
    document = load_spec("specs/only.yaml", variant="pocket")
    assert document.data["title"] == "Only"
    assert document.data["text_block"]["leaf"]["width"] == "100 mm"


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize(
    ("spec", "variant", "expected"),
    [
        (
            "specs/child.yaml",
            "pokcet",
            "specs/child.yaml:10:1: error: there is no variant 'pokcet'; did you mean 'pocket'?"
            " [unknown-variant]",
        ),
        (
            "specs/base.yaml",
            "xyz",
            "specs/base.yaml:12:1: error: there is no variant 'xyz'; the variants are pocket,"
            " folio. [unknown-variant]",
        ),
        (
            "specs/none.yaml",
            "xyz",
            "specs/none.yaml:1:1: error: there is no variant 'xyz'; the spec has no variants."
            " [unknown-variant]",
        ),
    ],
)
def test_an_unknown_variant(spec: str, variant: str, expected: str) -> None:
    write("specs/none.yaml", "title: None here")
    document = load_spec(spec, variant=variant)
    assert said(document) == [expected]
    assert document.data is None


@pytest.mark.usefixtures("here")
def test_mistakes_in_variants_are_all_told() -> None:
    write(
        "specs/v.yaml",
        "variants:\n  ../up: {}\n  b: 3\n  c: {extends: x, variants: {}, copies: 2}\n  d: {}",
    )
    document = load_spec("specs/v.yaml", variant="c")
    assert said(document) == [
        "specs/v.yaml:2:3: error: '../up' names a folder of the output; use letters, digits, '-'"
        " and '_'. [variant-name]",
        "specs/v.yaml:3:3: error: the variant 'b' takes keys and values: what differs from the"
        " spec. [variant-not-a-mapping]",
        "specs/v.yaml:4:7: error: a variant has no extends of its own. [variant-nested]",
        "specs/v.yaml:4:19: error: a variant has no variants of its own. [variant-nested]",
    ]
    assert document.data == {"copies": 2}
    write("specs/v.yaml", "variants: [a]")
    assert said(load_spec("specs/v.yaml")) == [
        "specs/v.yaml:1:11: error: variants takes names, each with what differs under it."
        " [variants-not-a-mapping]"
    ]
