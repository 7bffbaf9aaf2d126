"""Put the output of a build where it belongs: whole, or not at all.

The new files are written to a folder beside the old one, and both change places by renames.
Whatever interrupts that is mended at the next start, so that the former output or the new
one is there, never half of each. What is in the folder and not ours stays.
"""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from pathlib import Path, PurePosixPath

from foredge.contract import Diagnostic, Severity
from foredge.problem import Span

OURS = frozenset(
    {
        "build-sheet.html",
        "build-sheet.md",
        "cut-list.csv",
        "drawings",
        "quantities.json",
        "schedule.ics",
        "shopping.csv",
        "stages",
        "templates-a4.pdf",
        "templates-letter.pdf",
    }
)
"""Top names that a build may write; in an older output they are ours and may go."""


def write(out_dir: str | Path, name: str, files: Mapping[str, bytes]) -> Diagnostic | None:
    """Make ``out_dir/name`` hold exactly ``files``, beside whatever else lies there.

    Args:
        out_dir: made when it is not there.
        name: the build's name, one folder.
        files: relative path with ``/`` -> content.

    Returns:
        What kept it from being written; the former output is whole then. Raises ValueError
        for a path that leaves the folder: that is a fault in an emitter.
    """
    for path in files:
        _check(path)
    _check(name)
    out = Path(out_dir)
    target = out / name
    try:
        out.mkdir(parents=True, exist_ok=True)
        mend(out, name)
        reason = _refusal(target, files)
        if reason:
            return _failure(target, reason)
        fresh = _beside(out, name, "new")
        _fill(fresh, files)
        _swap(out, name)
    except OSError as failure:
        return _failure(target, f"{failure.strerror or failure}")
    return None


def compare(out_dir: str | Path, name: str, files: Mapping[str, bytes]) -> list[str]:
    """How ``out_dir/name`` differs from ``files``: missing, stale and extra files, sorted."""
    target = Path(out_dir) / name
    found = [f"{name}/{path}: {state}" for path, state in _states(target, files)]
    ours = OURS | {PurePosixPath(path).parts[0] for path in files}
    for place in sorted(target.rglob("*")) if target.is_dir() else ():
        path = place.relative_to(target).as_posix()
        if place.is_file() and path not in files and PurePosixPath(path).parts[0] in ours:
            found.append(f"{name}/{path}: extra, this build does not write it")
    return sorted(found)


def mend(out_dir: str | Path, name: str) -> None:
    """Finish or undo a swap that was interrupted. Raises OSError where it cannot."""
    out = Path(out_dir)
    target, fresh, former = out / name, _beside(out, name, "new"), _beside(out, name, "old")
    if former.exists():
        if target.exists():
            _carry_over(former, target)
            shutil.rmtree(former)
        else:
            former.rename(target)
    if fresh.exists():
        shutil.rmtree(fresh)


def _states(target: Path, files: Mapping[str, bytes]) -> list[tuple[str, str]]:
    states = []
    for path, content in files.items():
        place = target / path
        try:
            if place.read_bytes() != content:
                states.append((path, "stale"))
        except OSError:
            states.append((path, "missing"))
    return states


def _check(path: str) -> None:
    parts = PurePosixPath(path).parts
    if not parts or path.startswith("/") or ".." in parts or "\\" in path or "\0" in path:
        raise ValueError(f"'{path}' is no path inside the output folder")


def _beside(out: Path, name: str, what: str) -> Path:
    return out / f".{name}.foredge-{what}"


def _refusal(target: Path, files: Mapping[str, bytes]) -> str:
    """Why ``target`` must not be replaced; empty when it may."""
    if target.is_symlink() or (target.exists() and not target.is_dir()):
        return "there is something of this name that is not a folder"
    if target.is_dir():
        names = {entry.name for entry in target.iterdir()}
        if names and not names & (OURS | {PurePosixPath(path).parts[0] for path in files}):
            return "the folder holds other things and no build; name another with --out"
    return ""


def _fill(folder: Path, files: Mapping[str, bytes]) -> None:
    folder.mkdir()
    for path, content in files.items():
        place = folder / path
        place.parent.mkdir(parents=True, exist_ok=True)
        with place.open("wb") as stream:
            stream.write(content)
            stream.flush()
            os.fsync(stream.fileno())


def _swap(out: Path, name: str) -> None:
    target, fresh, former = out / name, _beside(out, name, "new"), _beside(out, name, "old")
    if target.exists():
        target.rename(former)
    fresh.rename(target)
    mend(out, name)


def _carry_over(former: Path, target: Path) -> None:
    """Move what is not ours from the former output into the new one."""
    for entry in sorted(former.iterdir()):
        if entry.name not in OURS and not (target / entry.name).exists():
            entry.rename(target / entry.name)


def _failure(target: Path, reason: str) -> Diagnostic:
    return Diagnostic(
        Span(target.as_posix(), 1, 1),
        Severity.ERROR,
        f"the output folder cannot be written: {reason}",
        "output-not-writable",
        consequence="The former output is as it was",
    )
