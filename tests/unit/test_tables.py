"""The reference tables hold together, and their loader says what is wrong."""

from __future__ import annotations

import copy
import dataclasses
import re
from typing import Any

import pytest
import yaml

from foredge import tables as module
from foredge.data import table_text
from foredge.tables import (
    MARKS,
    TABLES,
    Near,
    Row,
    TableError,
    Value,
    check_table,
    load_tables,
)


def _row(table: str, name: str) -> Row:
    return load_tables().row(table, name)


def _document(table: str) -> Any:
    return copy.deepcopy(module._document(table))


def _figures(row: Row) -> list[tuple[str, Value]]:
    return [*row.values(), *row.group("parts").items()]


@pytest.mark.parametrize("table", TABLES)
def test_every_table_keeps_to_the_schema(table: str) -> None:
    document = _document(table)
    check_table(table, document)
    assert document["table"] == table


def test_load_tables_can_validate_all() -> None:
    assert load_tables(validate=True).names("paper") == load_tables().names("paper")


def test_the_tables_are_shared() -> None:
    assert load_tables() is load_tables()


@pytest.mark.parametrize("table", [*TABLES, "sources"])
def test_no_key_stands_twice(table: str) -> None:
    # PyYAML keeps the last of two equal keys without a word.
    def look(node: yaml.Node) -> None:
        if isinstance(node, yaml.MappingNode):
            keys = [key.value for key, _ in node.value]
            assert len(keys) == len(set(keys)), f"{table}.yaml:{node.start_mark.line + 1}"
        children = node.value if isinstance(node.value, list) else []
        for child in children:
            for part in child if isinstance(child, tuple) else (child,):
                look(part)

    root = yaml.compose(table_text(f"{table}.yaml"), Loader=yaml.SafeLoader)
    assert root is not None
    look(root)


@pytest.mark.parametrize("table", TABLES)
def test_every_figure_says_where_it_is_from(table: str) -> None:
    for row in load_tables().rows(table):
        cited = [(row.citation, row.strong)]
        cited += [(value.citation, value.strong) for _, value in _figures(row)]
        for citation, strong in cited:
            # A citation has an author or a title, so several words; a mark is never strong.
            assert citation in MARKS or len(citation.split()) > 1, row.name
            assert not (citation in MARKS and strong), row.name


@pytest.mark.parametrize("table", TABLES)
def test_every_range_holds_its_figure(table: str) -> None:
    for row in load_tables().rows(table):
        for key, value in _figures(row):
            for first, last in ((value.low, value.high), (value.least, value.most)):
                assert (first is None) == (last is None), (row.name, key)
                if first is not None and last is not None:
                    assert first <= value.number <= last and first < last, (row.name, key)


@pytest.mark.parametrize("table", TABLES)
def test_a_figure_is_never_read_as_words(table: str) -> None:
    """A text that begins with a digit is a figure, so a mistyped unit cannot hide."""
    for row in load_tables().rows(table):
        figures = dict(row.values())
        for key, raw in row.fields.items():
            if isinstance(raw, str) and raw[0].isdigit() and key != "title":
                assert key in figures, (row.name, key)


def test_every_cited_caution_adhesive_and_ingredient_exists() -> None:
    tables = load_tables()
    for row in (row for table in TABLES for row in tables.rows(table)):
        assert set(row.texts("cautions")) <= set(tables.names("cautions")), row.name
        if row.table == "cloth":
            assert row.text("adhesive") in tables.names("adhesives"), row.name
        if row.table == "clays":
            assert set(row.group("parts")) <= set(tables.names("ingredients")), row.name


def test_every_source_is_of_one_strength() -> None:
    sources = module._document("sources")
    assert not set(sources["strong"]) & set(sources["weak"])


def test_no_citation_is_an_address() -> None:
    sources = module._document("sources")
    text = " ".join([*sources["strong"].values(), *sources["weak"].values()])
    assert not re.search(r"https?:|www\.|\.(com|org|net)\b", text)


def test_times_of_drying_rise() -> None:
    rows = [*load_tables().rows("drying"), *load_tables().rows("paints")]
    for row in rows:
        found = [row.maybe(key) for key in ("touch", "next", "cure", "close")]
        times = [value.number for value in found if value is not None]
        assert times == sorted(times), row.name


def test_a_figure_is_canonical_with_its_band() -> None:
    thickness = _row("board", "greyboard").get("thickness")
    assert (thickness.number, thickness.low, thickness.high) == (2.0, 1.9, 2.1)
    assert (thickness.dimension, thickness.unit, thickness.text) == ("length", "mm", "2 mm")
    density = _row("board", "greyboard").get("density")
    assert density.number == pytest.approx(0.645e-3)  # g/mm3
    assert _row("drying", "casing-in").get("next").number == 12 * 3600
    assert _row("paints", "base-coat").get("coverage").number == pytest.approx(0.108)  # mm
    assert _row("paper", "office").get("bulk").number == pytest.approx(1300)  # mm3/g
    assert tuple(_row("paper", "office").get("bulk").powers) == (3, -1, 0)


def test_a_choice_has_an_advised_range_and_no_band() -> None:
    square = load_tables().constant("square")
    assert (square.number, square.least, square.most) == (3.0, 2.0, 5.0)
    assert square.low is None and square.high is None


def test_a_band_may_go_below_zero() -> None:
    error = load_tables().constant("cut-error")
    assert (error.number, error.low, error.high) == (0.0, -0.5, 0.5)


def test_own_source_of_a_figure_replaces_that_of_the_row() -> None:
    row = _row("cloth", "book-cloth")
    assert row.citation.startswith("Arthur L. Bailey, Library Bookbinding") and row.strong
    turn_in = row.get("turn_in")
    assert turn_in.citation == (
        "Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, p. 118"
    )
    assert row.get("pull").citation == "from memory" and not row.get("pull").strong


def test_several_sources_are_joined() -> None:
    assert load_tables().cite("vaughn, p. 119; adam, p. 93") == (
        "Samuel J. Vaughn, Printing and Bookbinding for Schools, 1912, p. 119; "
        "Paul Adam, Practical Bookbinding, tr. T. E. Maw, 1903, p. 93"
    )


def test_words_lists_and_flags() -> None:
    cotton = _row("cloth", "cotton")
    assert cotton.text("backing") == "needed"
    assert cotton.text("missing", "none") == "none"
    assert _row("cloth", "goatskin").texts("cautions") == ("blade",)
    assert cotton.texts("cautions") == ()
    assert _row("thread", "waxed-linen").flag("waxed") and not cotton.flag("waxed")
    assert _row("clays", "spreadable").group("parts")["joint-filler"].number == 1


@pytest.mark.parametrize(
    ("asked", "near"), [("canvass", "canvas"), ("Book_Cloth", "book-cloth"), ("denims", "denim")]
)
def test_a_wrong_name_finds_near_ones(asked: str, near: str) -> None:
    found = load_tables().find("cloth", asked)
    assert isinstance(found, Near) and found.names[0] == near


def test_nothing_near() -> None:
    assert load_tables().find("cloth", "zzzzzz") == Near(())


def test_missing_rows_figures_tables_and_sources_are_named() -> None:
    tables = load_tables()
    with pytest.raises(TableError, match=r"cloth\.yaml has no row 'canvass'; near: canvas"):
        tables.row("cloth", "canvass")
    with pytest.raises(TableError, match="row 'canvas' has no figure 'bulk'"):
        tables.row("cloth", "canvas").get("bulk")
    assert tables.row("cloth", "canvas").maybe("bulk") is None
    with pytest.raises(TableError, match="no reference table 'cheese'"):
        tables.rows("cheese")
    with pytest.raises(TableError, match="no source 'nobody'"):
        tables.cite("nobody, p. 1")


@pytest.mark.parametrize("raw", ["2 parsec", "two mm", "1,5 mm", "mm", True, None, "- mm", "2mm x"])
def test_what_is_no_figure_is_refused(raw: object) -> None:
    row = Row("paper", "x", "X", "from memory", False, {"bulk": {"value": raw}})
    with pytest.raises(TableError, match=r"paper\.yaml: x\.bulk"):
        row.get("bulk")


def _break(table: str, **change: object) -> Any:
    document = _document(table)
    row = {**document["rows"][0], **change}
    document["rows"][0] = {key: value for key, value in row.items() if value is not None}
    return document


@pytest.mark.parametrize(
    ("table", "change"),
    [
        ("paper", {"colour": "white"}),
        ("paper", {"mark": "common practice"}),  # beside its source
        ("paper", {"source": None}),
        ("paper", {"name": "Office Paper"}),
        ("paper", {"bulk": "1.3 g/m2"}),
        ("paper", {"bulk": {"value": "1.3 cm3/g", "low": "1.2 cm3/g"}}),
        ("paper", {"bulk": {"value": "1.3 cm3/g", "lo": "1.2 cm3/g"}}),
        ("paper", {"grain": "sideways"}),
        ("board", {"coated_sides": 3}),
        ("cautions", {"signal": "beware"}),
        ("cautions", {"signs": ["X022"]}),
        ("kitchen", {"volume": "1 bucket"}),
        ("practice", {"amount": "6"}),
    ],
)
def test_the_schema_is_closed(table: str, change: dict[str, object]) -> None:
    with pytest.raises(TableError, match=rf"^{table}\.yaml: rows\.0"):
        check_table(table, _break(table, **change))


def test_values_and_rows_cannot_be_changed() -> None:
    row = _row("paper", "office")
    with pytest.raises(dataclasses.FrozenInstanceError):
        row.get("bulk").number = 1.0  # type: ignore[misc]
    with pytest.raises(TypeError):
        row.fields["bulk"] = 1  # type: ignore[index]
