"""The pipeline on one page: a spec goes in, a Build comes out, every step names its problems.

read -> check schema -> resolve -> run stages -> plan -> check rules -> Build
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from foredge.contract import Accepted, Build, Diagnostic, StageResult, merge
from foredge.findings import Findings, Stopped
from foredge.plan.order import order
from foredge.plan.whole import plan_whole
from foredge.quantity import bands
from foredge.readings import check_readings
from foredge.registry import Registry
from foredge.rules import check_rules
from foredge.spec.files import files_beside
from foredge.spec.inherit import load_spec
from foredge.spec.resolve import resolve
from foredge.spec.schema import check
from foredge.stages import run_stages
from foredge.tables import load_tables


@dataclass(frozen=True, slots=True)
class Compiled:
    """A build, or none where there are errors; and everything there is to say about the spec."""

    build: Build | None
    diagnostics: tuple[Diagnostic, ...]
    accepted: tuple[Accepted, ...] = ()
    variants: tuple[str, ...] = ()


def compile_spec(
    file: str, registry: Registry, *, variant: str | None = None, allow: Sequence[str] = ()
) -> Compiled:
    """Compile the spec in ``file``, or its ``variant``; ``allow`` names files it may extend.

    Never raises for anything a spec says: what is wrong is in the diagnostics.
    """
    document = load_spec(file, variant=variant, allow=allow)
    tables = load_tables()
    findings = Findings(document)
    build = None
    try:
        findings.read()
        findings.take(check(document.data, registry, tables), stop=True)
        files = files_beside(file, document.positions)
        book = findings.keep(resolve(document.data, registry, tables, files))
        findings.tell_in(book.display)
        ran = findings.keep(run_stages(registry.stages(), book))
        whole = merge(result for _, result in ran)
        work = findings.keep(
            order(whole.operations, tuple(stage.name for stage, _ in ran), whole.gates)
        )
        findings.take(check_readings(book, whole.gates))
        build = Build(
            name=output_name(file, variant),
            file=file,
            book=book,
            stages=ran,
            whole=whole,
            order=work,
            bands=dict(zip(names(whole), bands(whole.quantities), strict=True)),
            positions=document.positions,
            tables=tables,
        )
        build = findings.keep(plan_whole(build))
        findings.take(check_rules(build, registry), stop=True)
    except Stopped:
        build = None
    return Compiled(*findings.settle(build), variants=document.variants)


def names(whole: StageResult) -> list[str]:
    """Names of all quantities, in order."""
    return [quantity.name or "" for quantity in whole.quantities]


def output_name(file: str, variant: str | None) -> str:
    """The output folder's name: the spec's own, and the variant after an ``@``."""
    return Path(file).stem + (f"@{variant}" if variant else "")
