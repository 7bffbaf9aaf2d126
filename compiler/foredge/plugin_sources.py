"""Where plugins come from: the built-ins, installed distributions, files on the command line.

Every source is registered with pluggy, and asked on its own, so that a failure names it.
"""

from __future__ import annotations

import hashlib
import importlib
import sys
import traceback
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from importlib.metadata import EntryPoint, entry_points as installed_entry_points
from importlib.util import module_from_spec, spec_from_file_location
from pathlib import Path as FilePath
from types import ModuleType
from typing import Any

import pluggy

from foredge import __version__
from foredge.builtins import BUILTINS
from foredge.contract.hook import PROJECT, HookSpecs, hookimpl
from foredge.problem import Diagnostic, Severity, Span

BUILT_IN = "foredge"
GROUP = "foredge.plugins"


@dataclass(frozen=True, slots=True)
class Brought:
    """A plugin as its source brought it, not yet looked at."""

    plugin: Any
    owner: str
    version: str
    file: str


@dataclass(frozen=True, slots=True)
class Source:
    """One module, distribution or file that brings plugins; ``load`` is done at most once."""

    name: str
    owner: str
    version: str
    file: str
    brings: Any


class _Held:
    """Stands in for a source that has plugins in ``PLUGIN`` or ``PLUGINS`` and no hook."""

    def __init__(self, plugins: Iterable[Any]) -> None:
        self._plugins = tuple(plugins)

    @hookimpl
    def foredge_plugins(self) -> Sequence[Any]:
        """The plugins held."""
        return self._plugins


def bring(
    plugin_files: Sequence[str], *, entry_points: bool
) -> tuple[list[Brought], list[Diagnostic]]:
    """Every plugin of every source, in order: built-ins, distributions, files."""
    manager = pluggy.PluginManager(PROJECT)
    manager.add_hookspecs(HookSpecs)
    sources: dict[str, Source] = {}
    diagnostics: list[Diagnostic] = []
    for found in _sources(plugin_files, entry_points):
        if isinstance(found, Diagnostic):
            diagnostics.append(found)
            continue
        try:
            manager.register(found.brings, name=found.name)
            sources[found.name] = found
        except (ValueError, pluggy.PluginValidationError) as failure:
            diagnostics.append(_broken(found.owner, found.file, failure))
    diagnostics += _pending(manager, sources)
    brought, faults = _ask(manager, sources)
    return brought, [*diagnostics, *faults]


def _pending(manager: pluggy.PluginManager, sources: dict[str, Source]) -> list[Diagnostic]:
    """A hook implementation that no hook asks for is a misspelt one."""
    diagnostics: list[Diagnostic] = []
    for name, source in list(sources.items()):
        try:
            manager.check_pending()
            break
        except pluggy.PluginValidationError as failure:
            guilty = next((n for n, s in sources.items() if s.brings is failure.plugin), name)
            source = sources.pop(guilty)
            diagnostics.append(_broken(source.owner, source.file, failure))
            manager.unregister(name=guilty)
    return diagnostics


def _ask(
    manager: pluggy.PluginManager, sources: dict[str, Source]
) -> tuple[list[Brought], list[Diagnostic]]:
    answers: dict[str, list[Brought]] = {}
    plugins: Any
    diagnostics: list[Diagnostic] = []
    for implementation in manager.hook.foredge_plugins.get_hookimpls():
        source = sources[implementation.plugin_name]
        try:
            plugins = implementation.function()
            plugins = list(plugins)
        except (Exception, SystemExit) as failure:
            diagnostics.append(_broken(source.owner, source.file, failure))
            continue
        answers[source.name] = [
            Brought(plugin, source.owner, source.version, source.file) for plugin in plugins
        ]
    for name, source in sources.items():
        if name not in answers and not any(d.span.file == source.file for d in diagnostics):
            text = f"{source.owner} brings no plugin: it has no PLUGIN, PLUGINS or foredge_plugins"
            diagnostics.append(_diagnostic(Span(source.file, 1, 1), text))
    # pluggy calls the last registered first; the sources' own order is what counts here.
    return [one for name in sources for one in answers.get(name, ())], diagnostics


def _sources(plugin_files: Sequence[str], entry_points: bool) -> Iterator[Source | Diagnostic]:
    for name in BUILTINS:
        yield _built_in(name)
    if entry_points:
        for point in sorted(
            installed_entry_points(group=GROUP), key=lambda point: (_owner(point)[0], point.name)
        ):
            yield _installed(point)
    for file in plugin_files:
        yield _from_file(file)


def _built_in(name: str) -> Source | Diagnostic:
    try:
        module = importlib.import_module(name)
    except (Exception, SystemExit) as failure:
        return _broken(BUILT_IN, name, failure)
    return Source(name, BUILT_IN, __version__, _file_of(module, name), _hooked(module))


def _owner(point: EntryPoint) -> tuple[str, str]:
    return (point.dist.name, point.dist.version) if point.dist else (point.value, "")


def _installed(point: EntryPoint) -> Source | Diagnostic:
    owner, version = _owner(point)
    try:
        loaded = point.load()
    except (Exception, SystemExit) as failure:
        return _broken(owner, point.value, failure)
    module = sys.modules.get(point.module)
    file = _file_of(module, point.value)
    return Source(f"{owner}:{point.name}", owner, version, file, _hooked(loaded))


def _from_file(file: str) -> Source | Diagnostic:
    """Load one file by its path. Its module is known to Python, which type hints need."""
    place = FilePath(file)
    if not place.is_file():
        text = f"there is no plugin file '{file}'"
        return _diagnostic(Span(file, 1, 1), text)
    path = place.resolve()
    digest = hashlib.sha256(str(path).encode()).hexdigest()[:12]
    name = f"foredge_plugin_{digest}"
    spec = spec_from_file_location(name, path)
    if spec is None or spec.loader is None:
        return _diagnostic(Span(file, 1, 1), f"the plugin file '{file}' is not a Python file")
    module = module_from_spec(spec)
    sys.modules[name] = module
    try:
        spec.loader.exec_module(module)
    except (Exception, SystemExit) as failure:
        del sys.modules[name]
        return _broken(file, file, failure)
    version = str(getattr(module, "__version__", ""))
    return Source(name, file, version, file, _hooked(module))


def _hooked(loaded: Any) -> Any:
    """``loaded`` where it implements the hook; else what stands in for it."""
    if hasattr(loaded, "foredge_plugins"):
        return loaded
    if hasattr(loaded, "PLUGINS"):
        return _Held(loaded.PLUGINS)
    if hasattr(loaded, "PLUGIN"):
        return _Held([loaded.PLUGIN])
    if isinstance(loaded, ModuleType):
        return loaded  # with a misspelt hook, perhaps: pluggy will say
    return _Held(loaded if isinstance(loaded, list | tuple) else [loaded])


def _file_of(module: ModuleType | None, name: str) -> str:
    return getattr(module, "__file__", None) or name


def _broken(owner: str, file: str, failure: BaseException) -> Diagnostic:
    """One diagnostic for a source that cannot be loaded, at the line of it that failed."""
    words = " ".join(str(failure).split()) or "no more is said"
    text = f"the plugins of {owner} cannot be loaded: {type(failure).__name__}: {words}"
    return _diagnostic(Span(file, _line_in(FilePath(file).resolve(), failure), 1), text)


def _line_in(path: FilePath, failure: BaseException) -> int:
    if isinstance(failure, SyntaxError) and failure.filename == str(path):
        return failure.lineno or 1
    lines = [
        frame.lineno
        for frame in traceback.extract_tb(failure.__traceback__)
        if frame.filename == str(path) and frame.lineno
    ]
    return lines[-1] if lines else 1


def _diagnostic(span: Span, text: str) -> Diagnostic:
    return Diagnostic(span, Severity.ERROR, text, "plugin-load")
