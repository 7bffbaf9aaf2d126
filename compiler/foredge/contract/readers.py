"""Plugins that read the whole Build: emitters and rules."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Protocol

from foredge.contract.build import Build
from foredge.contract.plugin import Plugin
from foredge.problem import Problem, Severity


class Emitter(Plugin, Protocol):
    """Writes one or more files about a build; kind ``emitter``."""

    def emit(self, build: Build) -> Mapping[str, bytes]:
        """Relative path -> content. Same build, same bytes."""
        ...


class Rule(Plugin, Protocol):
    """A condition that goes wrong at the bench; kind ``rule``.

    ``name`` is the rule's name in messages, ``severity`` its usual severity,
    ``consequence``, ``remedy`` and ``source`` what ``foredge check --rules`` prints.
    """

    @property
    def severity(self) -> Severity: ...
    @property
    def consequence(self) -> str: ...
    @property
    def remedy(self) -> str: ...
    @property
    def source(self) -> str: ...

    def test(self, build: Build) -> Iterable[Problem]:
        """A problem for every place of the build where the condition holds."""
        ...
