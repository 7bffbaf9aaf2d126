"""Which files a spec is made of: itself, what it extends, and the files it names."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator
from pathlib import Path as FilePath
from typing import Any

from foredge.spec.inherit import load_spec
from foredge.spec.yaml_reader import Document, read_file

_FILE_NAME = re.compile(r"[^\0\n]{1,200}\.[A-Za-z0-9]{2,5}\Z")
"""A text of the spec that may name a file: a font, say. One too many does no harm."""


def files_of(spec: str, variant: str | None, allow: Iterable[str]) -> frozenset[FilePath]:
    """Every file that a save of may change what ``spec`` gives; they need not exist."""
    read: list[FilePath] = []
    named: set[FilePath] = set()

    def recorded(place: FilePath, name: str) -> Document:
        read.append(place)
        document = read_file(place, name)
        texts = _texts(document.data)
        named.update(place.parent / text for text in texts if _FILE_NAME.match(text))
        return document

    load_spec(spec, variant=variant, read=recorded, allow=allow)
    return frozenset(FilePath(place).absolute() for place in (FilePath(spec), *read, *named))


def _texts(data: Any) -> Iterator[str]:
    """All texts in a document that has no cycles: the reader refuses those."""
    if isinstance(data, str):
        yield data
    elif isinstance(data, dict):
        for value in data.values():
            yield from _texts(value)
    elif isinstance(data, list):
        for value in data:
            yield from _texts(value)
