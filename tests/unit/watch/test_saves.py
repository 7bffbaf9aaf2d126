"""Saves are noticed however an editor saves; other files are not."""

import threading
import time
from collections.abc import Callable
from pathlib import Path

import pytest

pytest.importorskip("watchfiles")

from foredge.watch.saves import on_save


def until(true: Callable[[], bool], seconds: float = 15.0) -> bool:
    end = time.monotonic() + seconds
    while time.monotonic() < end and not true():
        time.sleep(0.02)
    return true()


def test_a_save_a_rename_and_a_file_that_comes_later(tmp_path: Path) -> None:
    spec, base = tmp_path / "book.yaml", tmp_path / "parts" / "base.yaml"
    base.parent.mkdir()
    spec.write_text("1", encoding="utf-8")
    wanted = {spec}
    acts: list[str] = []
    stop = threading.Event()
    watching = threading.Thread(
        target=on_save,
        args=(lambda: frozenset(wanted), lambda: acts.append(spec.read_text("utf-8")), stop),
    )
    watching.start()
    time.sleep(0.5)
    spec.write_text("2", encoding="utf-8")
    assert until(lambda: acts[-1:] == ["2"])
    (tmp_path / "notes.txt").write_text("x", encoding="utf-8")
    beside = tmp_path / "book.yaml.new"
    wanted.add(base)
    beside.write_text("3", encoding="utf-8")
    beside.replace(spec)
    assert until(lambda: acts[-1:] == ["3"])
    time.sleep(0.5)
    count = len(acts)
    (tmp_path / "notes.txt").write_text("y", encoding="utf-8")
    time.sleep(0.5)
    assert len(acts) == count
    base.write_text("now", encoding="utf-8")
    assert until(lambda: len(acts) > count)
    stop.set()
    watching.join(timeout=10)
    assert not watching.is_alive()
