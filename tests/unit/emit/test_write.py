import os
from pathlib import Path

import pytest

from foredge.contract import Severity
from foredge.emit import write as module
from foredge.emit.write import compare, mend, write

OLD = {"build-sheet.md": b"old\n", "stages/case.md": b"old case\n"}
NEW = {"build-sheet.md": b"new\n", "quantities.json": b"{}\n", "drawings/a.svg": b"<svg/>\n"}


def tree(folder: Path) -> dict[str, bytes]:
    return {
        path.relative_to(folder).as_posix(): path.read_bytes()
        for path in folder.rglob("*")
        if path.is_file()
    }


def test_files_are_written_and_replaced_whole(tmp_path: Path) -> None:
    assert write(tmp_path / "deep" / "out", "book", OLD) is None
    assert tree(tmp_path / "deep" / "out") == {f"book/{path}": OLD[path] for path in OLD}
    assert write(tmp_path / "deep" / "out", "book", NEW) is None
    assert tree(tmp_path / "deep" / "out") == {f"book/{path}": NEW[path] for path in NEW}


def test_other_things_in_the_folder_stay(tmp_path: Path) -> None:
    write(tmp_path, "book", OLD)
    (tmp_path / "book" / "pictures").mkdir()
    (tmp_path / "book" / "pictures" / "mine.png").write_bytes(b"png")
    (tmp_path / "book" / "notes.txt").write_bytes(b"mine")
    write(tmp_path, "book", NEW)
    kept = {"pictures/mine.png": b"png", "notes.txt": b"mine"}
    assert tree(tmp_path / "book") == {**NEW, **kept}
    assert compare(tmp_path, "book", NEW) == []


def test_a_folder_that_holds_no_build_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "book").mkdir()
    (tmp_path / "book" / "thesis.txt").write_bytes(b"dear")
    problem = write(tmp_path, "book", NEW)
    assert problem is not None and problem.rule == "output-not-writable"
    assert "other things" in problem.text
    assert tree(tmp_path) == {"book/thesis.txt": b"dear"}


def test_a_file_or_a_link_in_the_way_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "book").write_bytes(b"a file")
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "linked").symlink_to(tmp_path / "elsewhere")
    for name in ("book", "linked"):
        problem = write(tmp_path, name, NEW)
        assert problem is not None and "not a folder" in problem.text
    assert (tmp_path / "book").read_bytes() == b"a file"


@pytest.mark.parametrize("fails_at", ["first rename", "second rename", "removal", "filling"])
def test_an_interruption_leaves_one_output_whole(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, fails_at: str
) -> None:
    write(tmp_path, "book", OLD)
    (tmp_path / "book" / "notes.txt").write_bytes(b"mine")
    rename, count = Path.rename, 0

    def broken_rename(self: Path, target: Path) -> Path:
        nonlocal count
        count += 1
        if count == {"first rename": 1, "second rename": 2}[fails_at]:
            raise KeyboardInterrupt
        return rename(self, target)

    def interrupt(*_: object, **__: object) -> None:
        raise KeyboardInterrupt

    with monkeypatch.context() as patch:
        if "rename" in fails_at:
            patch.setattr(Path, "rename", broken_rename)
        else:
            what = (os, "fsync") if fails_at == "filling" else (module.shutil, "rmtree")
            patch.setattr(*what, interrupt)
        with pytest.raises(KeyboardInterrupt):
            write(tmp_path, "book", NEW)
    mend(tmp_path, "book")
    whole = NEW if fails_at == "removal" else OLD
    assert tree(tmp_path) == {
        **{f"book/{path}": whole[path] for path in whole},
        "book/notes.txt": b"mine",
    }
    assert write(tmp_path, "book", NEW) is None
    assert tree(tmp_path / "book") == {**NEW, "notes.txt": b"mine"}


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_a_folder_without_permission(tmp_path: Path) -> None:
    write(tmp_path, "book", OLD)
    tmp_path.chmod(0o555)
    try:
        problem = write(tmp_path, "book", NEW)
    finally:
        tmp_path.chmod(0o755)
    assert problem is not None and "Permission denied" in problem.text
    assert tree(tmp_path / "book") == OLD


def test_an_output_folder_that_cannot_be_made(tmp_path: Path) -> None:
    (tmp_path / "out").write_bytes(b"a file")
    problem = write(tmp_path / "out", "book", NEW)
    assert problem is not None
    assert problem.severity is Severity.ERROR
    assert str(problem).startswith(f"{(tmp_path / 'out' / 'book').as_posix()}:1:1: error: ")
    assert (tmp_path / "out").read_bytes() == b"a file"


def test_compare_writes_nothing_and_names_every_difference(tmp_path: Path) -> None:
    assert compare(tmp_path, "book", NEW) == [f"book/{path}: missing" for path in sorted(NEW)]
    assert tree(tmp_path) == {}
    write(tmp_path, "book", OLD)
    assert compare(tmp_path, "book", OLD) == []
    assert compare(tmp_path, "book", NEW) == [
        "book/build-sheet.md: stale",
        "book/drawings/a.svg: missing",
        "book/quantities.json: missing",
        "book/stages/case.md: extra, this build does not write it",
    ]


@pytest.mark.parametrize("path", ["../x", "/x", "a/../../x", "a\\b", ""])
def test_a_path_that_leaves_the_folder_is_a_fault(tmp_path: Path, path: str) -> None:
    with pytest.raises(ValueError, match="no path inside"):
        write(tmp_path, "book", {path: b""})
    assert tree(tmp_path) == {}
