"""The reader: depth, bombs, sizes, files that cannot be read, and any text at all."""

from __future__ import annotations

import os
import stat
import sys
from pathlib import Path

import pytest
import yaml
from hypothesis import HealthCheck, given, settings, strategies as st

from foredge.problem import Span
from foredge.spec import yaml_reader
from foredge.spec.yaml_reader import Document, read_file, read_yaml


def said(document: Document) -> list[str]:
    return [str(problem) for problem in document.problems]


# Limits ----------------------------------------------------------------------------------


def test_depth_forty_is_read_and_forty_one_is_not() -> None:
    assert said(read_yaml("[" * 40 + "x" + "]" * 40, "f")) == []
    assert said(read_yaml("[" * 41 + "]" * 41, "f")) == [
        "f:1:41: error: this is nested more than 40 deep. [too-deep]"
    ]
    assert said(read_yaml("[" * 5000, "f")) == [
        "f:1:41: error: this is nested more than 40 deep. [too-deep]"
    ]


def test_depth_through_aliases_counts() -> None:
    text = "a: &a " + "[" * 30 + "x" + "]" * 30 + "\nb: " + "[" * 15 + "*a" + "]" * 15
    assert said(read_yaml(text, "f")) == [
        "f:2:19: error: this is nested more than 40 deep. [too-deep]"
    ]


def test_an_alias_bomb_is_refused_at_the_alias() -> None:
    lines = ["a: &a [x, x, x, x, x, x, x, x, x]"]
    lines += [
        f"{n}: &{n} [{', '.join(['*' + p] * 9)}]" for p, n in zip("abcde", "bcdef", strict=True)
    ]
    problems = said(read_yaml("\n".join(lines), "f"))
    assert problems == [
        "f:5:12: error: with its aliases written out the file holds more than 20,000 values."
        " [too-many-values]"
    ]


def test_a_bomb_of_merges_is_refused() -> None:
    keys = ", ".join(f"k{n}: 1" for n in range(3000))
    text = f"a: &a {{{keys}}}\nb: {{<<: [{', '.join(['*a'] * 10_000)}]}}"
    assert [p.rule for p in read_yaml(text, "f").problems] == ["too-many-values"]


def test_many_merges_of_merges_stay_small() -> None:
    lines = ["m0: &m0 {a: 1}"]
    lines += [f"m{n}: &m{n} {{<<: [{', '.join([f'*m{n - 1}'] * 9)}]}}" for n in range(1, 60)]
    document = read_yaml("\n".join(lines), "f")
    assert said(document) == []
    assert document.data["m59"] == {"a": 1}


def test_twenty_thousand_values() -> None:
    assert said(read_yaml("\n".join(["- x"] * 19_999), "f")) == []
    problems = said(read_yaml("\n".join(["- x"] * 20_000), "f"))
    assert problems == [
        "f:20000:3: error: with its aliases written out the file holds more than 20,000 values."
        " [too-many-values]"
    ]


def test_reading_stops_at_the_limit_and_not_at_the_end_of_the_file() -> None:
    text = "- x\n" * 30_000 + "- [never closed"
    assert [p.rule for p in read_yaml(text, "f").problems] == ["too-many-values"]


def test_too_large() -> None:
    assert said(read_yaml("é" * 128_000, "f")) == []
    assert said(read_yaml("a: " + "é" * 128_000, "f")) == [
        "f:1:1: error: the file has 256,003 bytes; at most 256,000 are read. [file-too-large]"
    ]


def test_running_out_of_stack_is_a_problem(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(yaml_reader, "MAX_DEPTH", 10**6)
    deep = 2 * sys.getrecursionlimit()
    assert [p.rule for p in read_yaml("[" * deep + "]" * deep, "f").problems] == ["too-deep"]


# Files -----------------------------------------------------------------------------------


def test_a_file_is_shown_under_the_name_given(tmp_path: Path) -> None:
    (tmp_path / "s.yaml").write_text("a: 1\na: 2\n", encoding="utf-8")
    document = read_file(tmp_path / "s.yaml", "specs/s.yaml")
    assert document.positions.of(("a",)) == Span("specs/s.yaml", 1, 4)
    assert str(document.problems[0]).startswith("specs/s.yaml:2:1: error: ")


def test_files_that_cannot_be_read(tmp_path: Path) -> None:
    (tmp_path / "big.yaml").write_bytes(b"a: " + b"x" * 300_000)
    (tmp_path / "latin.yaml").write_bytes("a: 1\nb: café\n".encode("latin-1"))
    (tmp_path / "wide.yaml").write_bytes("a: 1".encode("utf-16"))
    assert said(read_file(tmp_path / "none.yaml", "none.yaml")) == [
        "none.yaml:1:1: error: there is no file 'none.yaml'. [file-not-found]"
    ]
    assert said(read_file(tmp_path, "specs")) == [
        "specs:1:1: error: 'specs' is a folder, not a file. [path-is-a-folder]"
    ]
    assert said(read_file(tmp_path / "big.yaml", "big.yaml")) == [
        "big.yaml:1:1: error: the file has 300,003 bytes; at most 256,000 are read."
        " [file-too-large]"
    ]
    assert said(read_file(tmp_path / "latin.yaml", "latin.yaml")) == [
        "latin.yaml:2:7: error: the file is not UTF-8: byte 11 (0xe9) on line 2 begins no"
        " character; save the file as UTF-8. [not-utf-8]"
    ]
    assert [p.rule for p in read_file(tmp_path / "wide.yaml", "w").problems] == ["not-utf-8"]
    assert [p.rule for p in read_file("a\0b", "w").problems] == ["file-not-found"]
    assert [p.rule for p in read_file("x" * 5000, "w").problems] == ["file-unreadable"]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no pipes here")
def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe")
    assert [p.rule for p in read_file(tmp_path / "pipe", "pipe").problems] == ["file-unreadable"]


@pytest.mark.skipif(not hasattr(os, "geteuid") or os.geteuid() == 0, reason="root reads all")
def test_a_locked_file(tmp_path: Path) -> None:
    locked = tmp_path / "locked.yaml"
    locked.write_text("a: 1")
    locked.chmod(stat.S_IWUSR)
    assert [p.rule for p in read_file(locked, "l").problems] == ["file-unreadable"]


# Any text --------------------------------------------------------------------------------

# PyYAML's dumper writes these bare, and a reader folds them as line breaks.
LETTERS = st.characters(exclude_categories=["Cs"], exclude_characters="\x85\u2028\u2029\ufeff")
SCALARS = (
    st.none()
    | st.booleans()
    | st.integers(-(10**17), 10**17)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(LETTERS, max_size=12)
    | st.sampled_from(["no", "12:30", "010", "<<", "~", "1_000", "=", "0x1F", "&a", "*a", "a: b"])
)
DATA = st.recursive(
    SCALARS,
    lambda inner: (
        st.lists(inner, max_size=4) | st.dictionaries(st.text(LETTERS, max_size=6), inner)
    ),
    max_leaves=15,
)


@settings(max_examples=150, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(DATA, st.sampled_from([True, False, None]))
def test_what_is_dumped_is_read_back(data: object, flow: bool | None) -> None:
    class Dumper(yaml.SafeDumper):
        """Quotes whatever our own resolver would turn into something else."""

        yaml_implicit_resolvers = yaml_reader.Loader.yaml_implicit_resolvers

    text = yaml.dump(data, Dumper=Dumper, default_flow_style=flow, allow_unicode=True)
    document = read_yaml(text, "f")
    assert said(document) == []
    assert document.data == data
    for path in document.positions.values:
        found: object = document.data
        for step in path:
            found = found[step]  # type: ignore[index]


@settings(max_examples=300, deadline=None)
@given(
    st.text(max_size=60)
    | st.text(alphabet="ab:-[]{}&*!<'\"|>%@#?,~ \n\t019.", max_size=60)
    | st.lists(
        st.sampled_from(
            ["&a ", "*a", "<<: ", "a: ", "- ", "{", "}", "[", "]", "\n", "  ", "? ", "!x ",
             "!!int ", "x", ", ", '"\\', "u00", "|\n", "--- ", "%YAML 1.2\n", "...", "\ufeff", "\0"]
        ),
        max_size=25,
    ).map("".join)
)  # fmt: skip
def test_no_text_raises(text: str) -> None:
    document = read_yaml(text, "f")
    lines = text.count("\n") + text.count("\r") + 2
    for problem in document.problems:
        assert problem.text
        assert 1 <= problem.span.line <= lines + text.count("\x85") + text.count("\u2028") * 2
        assert problem.span.column >= 1


@settings(max_examples=100, deadline=None)
@given(st.binary(max_size=60))
def test_no_bytes_raise(tmp_path_factory: pytest.TempPathFactory, raw: bytes) -> None:
    path = tmp_path_factory.mktemp("raw") / "f.yaml"
    path.write_bytes(raw)
    read_file(path, "f.yaml")
