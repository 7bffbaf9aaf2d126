"""``foredge build``: write the sheets."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Sequence
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
from foredge.contract import Build, Diagnostic
from foredge.emit import emit
from foredge.emit.write import compare, write


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
    registry = load_plugins(plugins)
    runs = [run for _, _, run in compile_all(specs, registry, variant, allow)]
    found = list(dict.fromkeys(one for run in runs for one in run.diagnostics))
    print_problems(found, form)
    bad = [not _put(run, Path(out), checking, strict, quiet=form != "text") for run in runs]
    if any(bad) or failed(found, strict=strict):
        sys.exit(ERRORS)


def _refuse_twins(specs: Sequence[str]) -> None:
    names = Counter(Path(spec).stem for spec in specs)
    twins = sorted(name for name, times in names.items() if times > 1)
    if twins:
        raise click.UsageError(
            f"two specs in this run are called '{twins[0]}'; build them one by one"
        )


def _put(run: Compiled, out: Path, checking: bool, strict: bool, *, quiet: bool) -> bool:
    if run.build is None or failed(run.diagnostics, strict=strict):
        return False
    return _compare(run.build, out) if checking else _write(run.build, out, quiet)


def _compare(build: Build, out: Path) -> bool:
    stale = compare(out, build.name, emit(build))
    for line in stale:
        click.echo(f"stale: {line}", err=True)
    if stale:
        click.echo(f"run: foredge build {build.file} --out {out}", err=True)
    return not stale


def _write(build: Build, out: Path, quiet: bool) -> bool:
    problem: Diagnostic | None = write(out, build.name, emit(build))
    if problem is not None:
        print_problems([problem])
        return False
    if not quiet:
        click.echo(f"wrote {(out / build.name).as_posix()}")
    return True
