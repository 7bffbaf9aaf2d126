"""Files that a spec names, such as a font: read here, so that stages and plugins stay pure."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path as FilePath
from typing import Any

from foredge.contract import Path, Problem, SpecFile, error
from foredge.spec.words import shown
from foredge.spec.yaml_reader import Positions

Files = Callable[[str, dict[str, Any], Path], SpecFile | Problem]
"""(what the spec says, the keyword ``x-foredge-file``, where) -> the file, or what is wrong."""


def no_files(said: str, keyword: dict[str, Any], path: Path) -> SpecFile | Problem:
    """For a spec that stands in no folder."""
    text = f"there is no {keyword['what']} file {shown(said)}: the spec stands in no folder"
    return error(path, text, "file-not-found")


def files_beside(spec: str, positions: Positions) -> Files:
    """Reads files named in ``spec`` (its path) and in what it extends.

    A path is relative to the file that says it. It must lie in that file's folder tree or
    in the one of ``spec``, wherever links lead.
    """
    home = FilePath(spec).parent

    def read(said: str, keyword: dict[str, Any], path: Path) -> SpecFile | Problem:
        beside = FilePath(positions.of(path).file or spec).parent
        try:
            return _read(beside, home, said, keyword, path)
        except (OSError, RuntimeError, ValueError) as failure:
            reason = getattr(failure, "strerror", None) or str(failure)
            text = f"the {keyword['what']} file {shown(said)} cannot be read: {reason}"
            return error(path, text, "file-unreadable")

    return read


def _read(
    beside: FilePath, home: FilePath, said: str, keyword: dict[str, Any], path: Path
) -> SpecFile | Problem:
    what, most = keyword["what"], keyword["most"]
    place = (beside / said).resolve()
    if not any(place.is_relative_to(folder.resolve()) for folder in (beside, home)):
        text = f"the {what} file {shown(said)} lies outside the folder of the spec"
        return error(path, text, "file-outside", remedy="Put a copy beside the spec")
    if place.is_dir():
        text = f"{shown(said)} is a folder; a {what} file is needed here"
        return error(path, text, "path-is-a-folder")
    if not place.exists():
        text = f"there is no {what} file {shown(said)} beside the spec"
        remedy = "Write its path from the folder of this spec"
        return error(path, text, "file-not-found", remedy=remedy)
    if not place.is_file():
        return error(path, f"{shown(said)} is not a plain file", "file-unreadable")
    with place.open("rb") as stream:
        data = stream.read(most + 1)
    if len(data) > most:
        text = f"the {what} file {shown(said)} is larger than {most / 1e6:g} MB"
        return error(path, text, "file-too-large")
    return SpecFile(said, data)
