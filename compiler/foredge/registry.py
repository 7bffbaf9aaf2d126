"""Which plugins there are: collected once, checked, and never changed afterwards.

pluggy collects the objects; what is wrong with one is a diagnostic that names it and its
owner, and leaves the others as they are.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from difflib import get_close_matches
from graphlib import CycleError, TopologicalSorter
from types import MappingProxyType
from typing import Any

from foredge.contract import Diagnostic, Severity, Stage
from foredge.plugin_check import KINDS, faults_of
from foredge.plugin_sources import BUILT_IN, Brought, bring
from foredge.problem import Span


@dataclass(frozen=True, slots=True)
class Registered:
    """A plugin, the distribution or file that brought it, and where its code stands."""

    plugin: Any
    owner: str
    version: str
    file: str


class Registry:
    """All plugins by kind and name, and the stages in the order they run. Immutable."""

    __slots__ = ("_by_kind", "_stages")

    def __init__(self, found: Iterable[Registered], stages: Sequence[Stage] = ()) -> None:
        by_kind: dict[str, dict[str, Registered]] = {}
        for one in found:
            by_kind.setdefault(one.plugin.kind, {})[one.plugin.name] = one
        self._by_kind: Mapping[str, Mapping[str, Registered]] = MappingProxyType(by_kind)
        self._stages = tuple(stages)

    def find(self, kind: str, name: str) -> Registered | None:
        """The plugin ``name`` of ``kind``."""
        return self._by_kind.get(kind, {}).get(name)

    def names(self, kind: str) -> tuple[str, ...]:
        """Names of all plugins of ``kind``, sorted."""
        return tuple(sorted(self._by_kind.get(kind, ())))

    def kinds(self) -> tuple[str, ...]:
        """Every kind there is a plugin of, sorted."""
        return tuple(sorted(self._by_kind))

    def stages(self) -> tuple[Stage, ...]:
        """The stages, each after those it needs; by name where needs leave it open."""
        return self._stages

    def all(self) -> tuple[Registered, ...]:
        """Every plugin, by kind and name."""
        return tuple(
            self._by_kind[kind][name] for kind in self.kinds() for name in self.names(kind)
        )


def collect(
    plugin_files: Sequence[str] = (), *, entry_points: bool = True
) -> tuple[Registry, list[Diagnostic]]:
    """The built-ins, the installed plugins, and those in ``plugin_files``.

    Args:
        plugin_files: files named by the person at the command line. A spec never names one.
        entry_points: whether to ask the installed distributions.

    Returns:
        The registry of every plugin that is sound, and what is wrong with the others.
        Nothing a plugin does while it is loaded raises here.
    """
    brought, diagnostics = bring(plugin_files, entry_points=entry_points)
    registry, faults = assemble(brought)
    return registry, [*diagnostics, *faults]


def assemble(brought: Iterable[Brought]) -> tuple[Registry, list[Diagnostic]]:
    """A registry of those among ``brought`` that are sound, and what is wrong with the rest."""
    kept: dict[tuple[str, str], Registered] = {}
    diagnostics: list[Diagnostic] = []
    for one in brought:
        faults = faults_of(one.plugin, thorough=one.owner != BUILT_IN)
        if not faults:
            faults = _clashes(one, kept)
        if faults:
            diagnostics += [_refused(one, fault) for fault in faults]
            continue
        kept[one.plugin.kind, one.plugin.name] = Registered(
            one.plugin, one.owner, one.version, one.file
        )
    diagnostics += [_idle(one, kinds) for one, kinds in _idlers(tuple(kept.values()))]
    stages, faults_in_order = _in_order([one for one in kept.values() if _is_stage(one)])
    return Registry(kept.values(), stages), [*diagnostics, *faults_in_order]


def _is_stage(one: Registered) -> bool:
    return bool(one.plugin.kind == "stage")


def _clashes(one: Brought, kept: Mapping[tuple[str, str], Registered]) -> list[str]:
    """What ``one`` has in common with a plugin that was there first."""
    plugin = one.plugin
    first = kept.get((plugin.kind, plugin.name))
    if first is not None:
        return [
            f"there are two plugins '{plugin.name}' of kind '{plugin.kind}', "
            f"one of {first.owner} and one of {one.owner}"
        ]
    if plugin.kind != "stage":
        return []
    return [
        f"the stages '{other.plugin.name}' of {other.owner} and '{plugin.name}' of {one.owner} "
        f"have the same {word}, '{getattr(plugin, word)}'"
        for other in kept.values()
        if _is_stage(other)
        for word in ("section", "prefix")
        if getattr(other.plugin, word) == getattr(plugin, word)
    ]


def _idlers(kept: Sequence[Registered]) -> list[tuple[Registered, list[str]]]:
    """Plugins of a kind that no slot asks for, with the kinds that there are."""
    strange = [one for one in kept if one.plugin.kind not in KINDS]
    if not strange:
        return []  # the usual case, and no schema is made for it
    from foredge.spec.schema_sound import slots_of

    kinds = sorted(KINDS.union(*(slots_of(one.plugin) for one in kept)))
    return [(one, kinds) for one in strange if one.plugin.kind not in kinds]


def _idle(one: Registered, kinds: list[str]) -> Diagnostic:
    near = get_close_matches(one.plugin.kind, kinds, n=1)
    advice = f"did you mean '{near[0]}'?" if near else f"the kinds are {', '.join(kinds)}"
    return Diagnostic(
        Span(one.file, 1, 1),
        Severity.WARNING,
        f"nothing asks for a plugin of kind '{one.plugin.kind}', so '{one.plugin.name}' of "
        f"{one.owner} is never used; {advice}",
        "plugin-unused",
    )


def _refused(one: Brought, fault: str) -> Diagnostic:
    name = getattr(one.plugin, "name", None) or type(one.plugin).__name__
    return Diagnostic(
        Span(one.file, 1, 1),
        Severity.ERROR,
        f"the plugin '{name}' of {one.owner} is not taken: {fault}",
        "plugin-refused",
    )


def _in_order(found: Sequence[Registered]) -> tuple[list[Stage], list[Diagnostic]]:
    """Stages after their needs; those with a missing need or in a circle are left out."""
    by_name = {one.plugin.name: one for one in found}
    diagnostics = [fault for one in found for fault in _missing(one, by_name)]
    while True:
        _drop_lacking(by_name)
        sorter = TopologicalSorter(
            {name: sorted(one.plugin.needs) for name, one in sorted(by_name.items())}
        )
        try:
            sorter.prepare()
        except CycleError as failure:
            circle = failure.args[1]
            diagnostics.append(_circle(by_name[circle[0]], circle))
            for name in set(circle):
                del by_name[name]
            continue
        return list(_sorted(sorter, by_name)), diagnostics


def _drop_lacking(by_name: dict[str, Registered]) -> None:
    """Take out each stage that needs one which is not there, until none does."""
    while lacking := [n for n, one in by_name.items() if set(one.plugin.needs) - set(by_name)]:
        for name in lacking:
            del by_name[name]


def _sorted(sorter: TopologicalSorter[str], by_name: Mapping[str, Registered]) -> Iterator[Stage]:
    while sorter.is_active():
        ready = sorted(sorter.get_ready())
        yield from (by_name[name].plugin for name in ready)
        sorter.done(*ready)


def _missing(one: Registered, by_name: Mapping[str, Registered]) -> list[Diagnostic]:
    return [
        Diagnostic(
            Span(one.file, 1, 1),
            Severity.ERROR,
            f"the stage '{one.plugin.name}' of {one.owner} needs the stage '{need}', "
            "and there is none of that name",
            "stage-missing",
        )
        for need in one.plugin.needs
        if need not in by_name
    ]


def _circle(one: Registered, circle: Sequence[str]) -> Diagnostic:
    return Diagnostic(
        Span(one.file, 1, 1),
        Severity.ERROR,
        f"stages need each other in a circle: {' -> '.join(circle)}",
        "stage-cycle",
    )
