"""``foredge build``: write the sheets."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Mapping, Sequence
from pathlib import Path

import click

from foredge.cli.common import (
    ERRORS,
    failed,
    format_option,
    load_plugins,
    print_problems,
    spec_options,
    strict_option,
)
from foredge.cli.runs import compile_all
from foredge.compile import Compiled
from foredge.contract import Build, Diagnostic, Emitter, Severity
from foredge.emit import EMITTERS, EmitterError, emit
from foredge.emit.write import compare, write
from foredge.problem import Span


@click.command("build")
@click.argument("specs", nargs=-1, required=True, metavar="SPEC...")
@click.option(
    "--out", required=True, metavar="DIR", help="Folder for the output, one folder a spec."
)
@click.option("--check", "checking", is_flag=True, help="Write nothing; fail where DIR is stale.")
@spec_options
@format_option
@strict_option
def command(
    specs: tuple[str, ...],
    out: str,
    checking: bool,
    plugins: tuple[str, ...],
    variant: str | None,
    allow: tuple[str, ...],
    form: str,
    strict: bool,
) -> None:
    """Compile specs and write DIR/<spec name>/ (DIR/<spec name>@<variant>/) for each.

    A spec with errors leaves its former output as it was.
    """
    _refuse_twins(specs)
    registry = load_plugins(plugins, form)
    runs = [run for _, _, run in compile_all(specs, registry, variant, allow)]
    found = list(dict.fromkeys(one for run in runs for one in run.diagnostics))
    consents = [one for run in runs for one in run.accepted]
    print_problems(found, form, accepted=consents, registry=registry)
    emitters = (*EMITTERS, *(one.plugin for one in registry.all() if one.plugin.kind == "emitter"))
    bad = [not _put(run, Path(out), emitters, checking, strict, form != "text") for run in runs]
    if any(bad) or failed(found, strict=strict):
        sys.exit(ERRORS)


def _refuse_twins(specs: Sequence[str]) -> None:
    names = Counter(Path(spec).stem for spec in specs)
    twins = sorted(name for name, times in names.items() if times > 1)
    if twins:
        raise click.UsageError(
            f"two specs in this run are called '{twins[0]}'; build them one by one"
        )


def _put(
    run: Compiled,
    out: Path,
    emitters: Sequence[Emitter],
    checking: bool,
    strict: bool,
    quiet: bool,
) -> bool:
    if run.build is None or failed(run.diagnostics, strict=strict):
        return False
    try:
        files = emit(run.build, emitters)
    except EmitterError as failure:
        place = Span(run.build.file, 1, 1)
        print_problems([Diagnostic(place, Severity.ERROR, str(failure), "plugin-failed")])
        return False
    return _compare(run.build, out, files) if checking else _write(run.build, out, files, quiet)


def _compare(build: Build, out: Path, files: Mapping[str, bytes]) -> bool:
    stale = compare(out, build.name, files)
    for line in stale:
        click.echo(f"stale: {line}", err=True)
    if stale:
        click.echo(f"run: foredge build {build.file} --out {out}", err=True)
    return not stale


def _write(build: Build, out: Path, files: Mapping[str, bytes], quiet: bool) -> bool:
    problem: Diagnostic | None = write(out, build.name, files)
    if problem is not None:
        print_problems([problem])
        return False
    if not quiet:
        click.echo(f"wrote {(out / build.name).as_posix()}")
    return True
