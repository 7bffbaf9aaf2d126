"""For the tests of plugins, ours and other people's: a book out of a text, and the contract.

A plugin's own test file needs no more than this::

    from foredge.testing import book_from, check_plugin

    def test_contract():
        check_plugin(PLUGIN)

    def test_width():
        book = book_from(SPEC, plugins=[PLUGIN])
"""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path as FilePath
from typing import Any

from foredge.contract import Book, Stage, StageResult, Upstream
from foredge.findings import Findings, Stopped
from foredge.plugin_check import NAME, faults_of
from foredge.plugin_sources import Brought, bring
from foredge.registry import Registry, assemble
from foredge.spec.files import files_beside, no_files
from foredge.spec.inherit import load_spec
from foredge.spec.resolve import resolve
from foredge.spec.schema import check
from foredge.spec.schema_sound import undescribed
from foredge.spec.yaml_reader import Document, read_yaml
from foredge.stages import verify
from foredge.tables import load_tables

__all__ = [
    "book_from",
    "check_plugin",
    "check_result",
    "check_stage",
    "diagnostics_of",
    "registry_of",
]


def registry_of(*plugins: Any, builtins: bool = True) -> Registry:
    """A registry of ``plugins``, and of the built-ins unless told otherwise.

    A plugin in ``plugins`` takes the place of a built-in of its name. Raises AssertionError
    where one of ``plugins`` is not sound.
    """
    own = [Brought(plugin, "the test", "", "test") for plugin in plugins]
    names = {(plugin.kind, plugin.name) for plugin in plugins}
    ours, faults = bring((), entry_points=False) if builtins else ([], [])
    kept = [one for one in ours if (one.plugin.kind, one.plugin.name) not in names]
    registry, refused = assemble([*kept, *own])
    assert not [*faults, *refused], "\n".join(map(str, [*faults, *refused]))
    return registry


def _document(text: str, name: str) -> Document:
    def read(place: FilePath, name: str) -> Document:
        return read_yaml(text, name)

    return load_spec(name, read=read)


def diagnostics_of(
    text: str,
    *,
    plugins: Iterable[Any] = (),
    registry: Registry | None = None,
    folder: FilePath | None = None,
) -> list[str]:
    """What is said of the spec in ``text`` before any stage runs, as the maker reads it."""
    return _resolved(text, registry or registry_of(*plugins), folder)[1]


def book_from(
    text: str,
    *,
    plugins: Iterable[Any] = (),
    registry: Registry | None = None,
    folder: FilePath | None = None,
) -> Book:
    """The book that the spec in ``text`` describes.

    ``plugins`` are taken in addition to the built-ins; ``registry`` in place of both.
    ``folder`` is where the spec stands, for the files that it names. Raises AssertionError
    with everything that is wrong where the spec is not clean.
    """
    book, said = _resolved(text, registry or registry_of(*plugins), folder)
    assert book is not None and not said, "\n".join(said)
    return book


def _resolved(
    text: str, registry: Registry, folder: FilePath | None
) -> tuple[Book | None, list[str]]:
    name = "book.yaml" if folder is None else str(folder / "book.yaml")
    document = _document(text, name)
    tables = load_tables()
    findings = Findings(document)
    book: Book | None = None
    try:
        findings.read()
        findings.take(check(document.data, registry, tables), stop=True)
        files = no_files if folder is None else files_beside(name, document.positions)
        book = findings.keep(resolve(document.data, registry, tables, files))
    except Stopped:
        book = None
    return book, [str(diagnostic) for diagnostic in findings.settle(None)[1]]


def check_plugin(plugin: Any) -> None:
    """The contract every plugin keeps; raises AssertionError with each point it breaks.

    Its name and title, the methods of its kind, a closed schema of keywords that are known,
    and a description of every option.
    """
    faults = faults_of(plugin, thorough=True)
    if not faults and getattr(plugin, "options", None) is not None:
        faults = [f"the option '{name}' has no description" for name in undescribed(plugin)]
    assert not faults, f"{plugin!r}:\n" + "\n".join(faults)


def check_stage(stage: Stage, book: Book, upstream: Upstream) -> StageResult:
    """Run ``stage`` twice: the same result, none of what the compiler refuses, all explained."""
    result = stage.run(book, upstream)
    again = stage.run(book, upstream)
    assert repr(result) == repr(again), f"the stage '{stage.name}' gives two different results"
    known = [quantity for _, done in upstream.results for quantity in done.quantities]
    faults = [problem.text for problem in verify(stage, result, known)]
    assert not faults, "\n".join(faults)
    check_result(result)
    return result


def check_result(result: StageResult) -> None:
    """Every computed quantity says why and who says so; every operation tells what to do."""
    faults = [
        f"the quantity '{quantity.name}' has no {word}"
        for quantity in result.quantities
        if quantity.op != "leaf"
        for word in ("rule", "source")
        if not getattr(quantity, word)
    ]
    faults += [
        f"the operation '{operation.id}' has no {word}"
        for operation in result.operations
        for word in ("title", "steps")
        if not getattr(operation, word)
    ]
    faults += [
        f"the problem '{problem.text}' has a rule '{problem.rule}' that is no kebab-case name"
        for problem in result.problems
        if not NAME.fullmatch(problem.rule)
    ]
    assert not faults, "\n".join(faults)
