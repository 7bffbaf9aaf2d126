"""Files that a spec names: found beside the file that says it, and nowhere else."""

from __future__ import annotations

from pathlib import Path

import pytest

from foredge.contract import Problem, SpecFile
from foredge.problem import Span
from foredge.spec.files import files_beside, no_files
from foredge.spec.yaml_reader import Positions

HERE = ("embellishment", 0, "font")
KEYWORD = {"what": "font", "most": 100}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    home = tmp_path / "specs"
    (home / "base").mkdir(parents=True)
    (home / "own.ttf").write_bytes(b"own")
    (home / "base" / "shared.ttf").write_bytes(b"shared")
    (home / "large.ttf").write_bytes(b"x" * 101)
    (home / "full.ttf").write_bytes(b"x" * 100)
    (tmp_path / "secret.ttf").write_bytes(b"secret")
    (home / "link.ttf").symlink_to(tmp_path / "secret.ttf")
    return home


def read(folder: Path, said: str, by: str = "book.yaml") -> SpecFile | Problem:
    """What is had for ``said`` in the file ``by``, with ``book.yaml`` as the spec compiled."""
    span = Span(str(folder / by), 3, 7)
    return files_beside(str(folder / "book.yaml"), Positions({HERE: span}, {}))(said, KEYWORD, HERE)


@pytest.mark.parametrize(
    ("said", "by", "data"),
    [
        ("own.ttf", "book.yaml", b"own"),
        ("base/shared.ttf", "book.yaml", b"shared"),
        ("shared.ttf", "base/base.yaml", b"shared"),
        ("../own.ttf", "base/base.yaml", b"own"),
        ("./base/../own.ttf", "book.yaml", b"own"),
    ],
)
def test_a_path_starts_at_the_file_that_says_it(
    folder: Path, said: str, by: str, data: bytes
) -> None:
    found = read(folder, said, by)
    assert isinstance(found, SpecFile)
    assert (found.path, found.data) == (said, data)


@pytest.mark.parametrize(
    ("said", "rule"),
    [
        ("none.ttf", "file-not-found"),
        ("base", "path-is-a-folder"),
        ("../secret.ttf", "file-outside"),
        ("link.ttf", "file-outside"),
        ("/etc/hostname", "file-outside"),
        ("large.ttf", "file-too-large"),
        ("a\0b", "file-unreadable"),
        ("n" * 5000, "file-unreadable"),
    ],
)
def test_what_cannot_be_had_is_a_problem_at_its_place(folder: Path, said: str, rule: str) -> None:
    found = read(folder, said)
    assert isinstance(found, Problem)
    assert (found.rule, found.path) == (rule, HERE)
    assert "secret" not in repr(found).replace("secret.ttf", "")


def test_a_file_of_just_the_size_is_read(folder: Path) -> None:
    found = read(folder, "full.ttf")
    assert isinstance(found, SpecFile) and len(found.data) == 100


def test_a_spec_of_an_allowed_folder_elsewhere_names_files_beside_itself(
    folder: Path, tmp_path: Path
) -> None:
    span = Span(str(tmp_path / "base.yaml"), 1, 1)
    files = files_beside(str(folder / "book.yaml"), Positions({HERE: span}, {}))
    found = files("secret.ttf", KEYWORD, HERE)
    assert isinstance(found, SpecFile) and found.data == b"secret"


def test_the_bytes_are_not_printed() -> None:
    assert "secret" not in repr(SpecFile("a.ttf", b"secret"))


def test_without_a_folder_there_are_no_files() -> None:
    found = no_files("own.ttf", KEYWORD, HERE)
    assert isinstance(found, Problem) and found.rule == "file-not-found"
