"""Reuse of specs: ``extends`` lays a spec over another, ``variants`` lay overlays over it.

What the merge does is in :mod:`foredge.spec.merge`; here is what may be read, and in which
order. ``measured`` and ``done`` speak of one physical copy, so they are never inherited: not
from the extended spec, and not by a variant from the spec it varies.
"""

from __future__ import annotations

import os
import posixpath
import re
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from pathlib import Path as FilePath
from typing import Any

from foredge.problem import Diagnostic, Severity, Span
from foredge.spec.merge import Layer, Merger
from foredge.spec.yaml_reader import Document, Positions, read_file, unread

Reader = Callable[[FilePath, str], Document]

MAX_CHAIN = 20
_ONE_COPY = ("measured", "done")
_OF_THE_PLACE = ("file-not-found", "path-is-a-folder", "file-unreadable")
_NAME = re.compile(r"[^\W_][\w-]*\Z")


@dataclass(frozen=True, slots=True)
class _Part:
    """One file of the chain, merged with what it extends; overlays kept apart."""

    data: dict[str, Any] | None
    positions: Positions
    overlays: Layer | None
    problems: tuple[Diagnostic, ...]


def load_spec(
    path: str,
    *,
    variant: str | None = None,
    read: Reader = read_file,
    allow: Iterable[str] = (),
) -> Document:
    """Read the spec at ``path`` with all it extends, and lay ``variant`` over it if named.

    Args:
        path: the spec as the user named it; messages call it so.
        variant: name of one of its variants.
        read: reads one file, given its place and the name that messages use.
        allow: files the user named, which may be extended though they lie elsewhere.

    Returns:
        The merged document, without ``extends`` and ``variants``. Each position is in the
        file that said the value. ``data`` is None when a file of the chain cannot be read
        or the variant does not exist; ``problems`` then says why.
    """
    name = path.replace(os.sep, "/")
    try:
        home = FilePath(path).parent.resolve()
        chain = _Chain(read, home, frozenset(FilePath(one).resolve() for one in allow))
        part = chain.load(FilePath(path), name, ())
    except (OSError, RuntimeError, ValueError) as failure:
        return unread(Span(name, 1, 1), f"'{name}' cannot be read: {failure}", "file-unreadable")
    names = tuple(part.overlays.data) if part.overlays else ()
    document = Document(part.data, part.positions, part.problems, names)
    if variant is None or part.data is None:
        return document
    return _vary(document, part.overlays, variant)


def variant_names(document: Document) -> tuple[str, ...]:
    """Names of the variants of a loaded spec, its own and the inherited ones."""
    return document.variants


@dataclass(frozen=True, slots=True)
class _Chain:
    """Follows ``extends`` from file to file."""

    read: Reader
    home: FilePath
    allowed: frozenset[FilePath]

    def load(self, place: FilePath, name: str, seen: tuple[tuple[FilePath, str], ...]) -> _Part:
        """The file at ``place`` merged over what it extends; ``seen`` are those that led here."""
        document = self.read(place, name)
        problems = list(document.problems)
        if document.data is None and problems:
            return _Part(None, document.positions, None, document.problems)
        if not isinstance(document.data, dict):
            text = "a spec is made of keys and values, such as 'title: ...'"
            problems.append(_error(Span(name, 1, 1), text, "spec-not-a-mapping"))
            return _Part(None, document.positions, None, tuple(problems))
        own = Layer(_without(document.data, "extends", "variants"), document.positions)
        overlays, faults = _overlays(document)
        problems += faults
        if document.data.get("extends") is None:
            return _alone(own, overlays, problems)
        base = self._base(document, place, name, (*seen, (place.resolve(), name)))
        problems += base.problems
        if base.data is None:
            return _Part(None, document.positions, None, tuple(problems))
        return _over(base, own, overlays, problems)

    def _base(
        self,
        document: Document,
        place: FilePath,
        name: str,
        seen: tuple[tuple[FilePath, str], ...],
    ) -> _Part:
        """What ``document`` extends, or the reason at its ``extends`` line."""
        span = document.positions.of(("extends",))
        said = document.data["extends"]
        if not isinstance(said, str) or not said.strip():
            text = "extends takes the path of one spec, such as 'base.yaml'"
            return _failed(span, text, "extends-not-a-path")
        target = place.parent / said
        shown = posixpath.normpath(posixpath.join(posixpath.dirname(name), said))
        try:
            real = target.resolve()
        except (OSError, RuntimeError, ValueError) as failure:
            return _failed(span, f"'{said}' cannot be read: {failure}", "file-unreadable")
        if not real.is_relative_to(self.home) and real not in self.allowed:
            text = f"'{said}' lies outside the folder of the spec; name it on the command line too"
            return _failed(span, text, "extends-outside")
        if real in (one for one, _ in seen):
            start = [one for one, _ in seen].index(real)
            circle = " -> ".join([*(shown_as for _, shown_as in seen[start:]), shown])
            return _failed(
                span, f"the specs extend each other in a circle: {circle}", "extends-cycle"
            )
        if len(seen) >= MAX_CHAIN:
            text = f"more than {MAX_CHAIN} specs extend one another"
            return _failed(span, text, "extends-too-deep")
        part = self.load(target, shown, seen)
        if part.data is None and part.problems and part.problems[0].rule in _OF_THE_PLACE:
            fault = part.problems[0]
            if fault.span == Span(shown, 1, 1):
                return _failed(span, fault.text, fault.rule)
        return part


def _alone(own: Layer, overlays: Layer | None, problems: list[Diagnostic]) -> _Part:
    """A spec that extends nothing: only its nulls go."""
    merger = Merger()
    data = merger.copy(own)
    positions = _with_heads(merger.positions, own.positions)
    return _Part(data, positions, _merge_overlays(None, overlays), tuple(problems))


def _over(base: _Part, own: Layer, overlays: Layer | None, problems: list[Diagnostic]) -> _Part:
    """A spec laid over the spec it extends, and its overlays over the inherited ones."""
    merger = Merger()
    lower = Layer(_without(base.data or {}, *_ONE_COPY), base.positions)
    data = merger.merge(lower, own)
    positions = _with_heads(merger.positions, own.positions)
    return _Part(data, positions, _merge_overlays(base.overlays, overlays), tuple(problems))


def _merge_overlays(lower: Layer | None, upper: Layer | None) -> Layer | None:
    """Variants of the extended spec, with those of the spec itself laid over them."""
    merger = Merger(keep_null=True)
    if lower is not None:
        handed_down = {name: _without(data, *_ONE_COPY) for name, data in lower.data.items()}
        lower = replace(lower, data=handed_down)
    if lower is None or upper is None:
        only = lower or upper
        merged = merger.copy(only) if only else {}
    else:
        merged = merger.merge(lower, upper)
    named = {name: data for name, data in merged.items() if data is not None}
    return Layer(named, merger.positions) if named else None


def _overlays(document: Document) -> tuple[Layer | None, list[Diagnostic]]:
    """The ``variants`` of one file, those that are no mapping told and left out."""
    said = document.data.get("variants")
    path = ("variants",)
    if said is None:
        return None, []
    if not isinstance(said, dict):
        text = "variants takes names, each with what differs under it"
        return None, [_error(document.positions.of(path), text, "variants-not-a-mapping")]
    faults, good = [], {}
    for name, overlay in said.items():
        place = document.positions.of((*path, name), on_key=True)
        if not _NAME.match(name):
            text = f"'{name}' names a folder of the output; use letters, digits, '-' and '_'"
            faults.append(_error(place, text, "variant-name"))
        elif overlay is not None and not isinstance(overlay, dict):
            text = f"the variant '{name}' takes keys and values: what differs from the spec"
            faults.append(_error(place, text, "variant-not-a-mapping"))
        else:
            inner = [key for key in ("extends", "variants") if key in (overlay or {})]
            for key in inner:
                place = document.positions.of((*path, name, key), on_key=True)
                faults.append(_error(place, f"a variant has no {key} of its own", "variant-nested"))
            good[name] = _without(overlay, *inner) if overlay else overlay
    return Layer(good, document.positions, path), faults


def _vary(document: Document, overlays: Layer | None, variant: str) -> Document:
    """``document`` with one of its variants laid over it."""
    if overlays is None or variant not in overlays.data:
        near = get_close_matches(variant, document.variants, n=1, cutoff=0.5)
        known = (
            f"the variants are {', '.join(document.variants)}"
            if document.variants
            else ("the spec has no variants")
        )
        advice = f"did you mean '{near[0]}'?" if near else known
        span = document.positions.of(("variants",), on_key=True)
        fault = _error(span, f"there is no variant '{variant}'; {advice}", "unknown-variant")
        return replace(document, data=None, problems=(*document.problems, fault))
    merger = Merger()
    lower = Layer(_without(document.data, *_ONE_COPY), document.positions)
    data = merger.merge(lower, overlays.at(variant))
    positions = _with_heads(merger.positions, document.positions)
    return replace(document, data=data, positions=positions)


def _with_heads(positions: Positions, own: Positions) -> Positions:
    """Keep where the spec itself, its ``extends`` and its ``variants`` stand."""
    for path in ((), ("extends",), ("variants",)):
        if path in own.values:
            positions.values[path] = own.values[path]
        if path in own.keys:
            positions.keys[path] = own.keys[path]
    return positions


def _without(data: Mapping[str, Any] | None, *keys: str) -> dict[str, Any]:
    return {key: value for key, value in (data or {}).items() if key not in keys}


def _error(span: Span, text: str, rule: str) -> Diagnostic:
    return Diagnostic(span, Severity.ERROR, text, rule)


def _failed(span: Span, text: str, rule: str) -> _Part:
    return _Part(None, Positions({}, {}), None, (_error(span, text, rule),))
