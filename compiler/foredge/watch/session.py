"""One spec, compiled again and again."""

from __future__ import annotations

import traceback
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path as FilePath

from foredge.compile import compile_spec
from foredge.contract import Diagnostic, Severity
from foredge.emit import EMITTERS, EmitterError, emit
from foredge.registry import Registry, collect
from foredge.watch.board import Board
from foredge.watch.files import files_of


@dataclass(frozen=True, slots=True)
class Session:
    """What the command line asked for. ``tell`` prints problems."""

    spec: str
    variant: str | None
    allow: tuple[str, ...]
    plugins: tuple[str, ...]
    tell: Callable[[Sequence[Diagnostic]], None]

    def files(self) -> frozenset[FilePath]:
        """Every file whose change asks for a new build."""
        named = (FilePath(file).absolute() for file in self.plugins)
        return files_of(self.spec, self.variant, self.allow) | frozenset(named)

    def build(self, board: Board) -> bool:
        """Compile once and put the result on ``board``; whether there is a new page."""
        try:
            registry, found = collect(self.plugins)
            self.tell(found)
            if _errors(found):
                board.put(None, [str(one) for one in found])
                return False
            return self._compile(registry, board)
        except Exception as failure:  # a fault of ours must not end the watch
            traceback.print_exc()
            board.put(None, [f"{self.spec}: the compiler failed: {failure!r}"])
            return False

    def _compile(self, registry: Registry, board: Board) -> bool:
        run = compile_spec(self.spec, registry, variant=self.variant, allow=self.allow)
        self.tell(run.diagnostics)
        if run.build is None or _errors(run.diagnostics):
            board.put(None, [str(one) for one in run.diagnostics if _errors([one])])
            return False
        own = (one.plugin for one in registry.all() if one.plugin.kind == "emitter")
        try:
            files = emit(run.build, (*EMITTERS, *own))
        except EmitterError as failure:
            board.put(None, [f"{self.spec}: {failure}"])
            return False
        board.put(files, ())
        return True


def _errors(found: Sequence[Diagnostic]) -> bool:
    return any(one.severity is Severity.ERROR for one in found)
