"""What several commands share: options, loading plugins, printing problems."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any, TypeVar

import click

from foredge.contract import Accepted, Diagnostic, Severity
from foredge.registry import Registry, collect

Command = TypeVar("Command", bound=Callable[..., Any])

ERRORS = 1
"""Exit status where a spec has errors."""

plugin_option = click.option(
    "--plugin",
    "plugins",
    multiple=True,
    metavar="FILE.py",
    help="Load a plugin file too; may be given again. A spec can never make code load.",
)

variant_option = click.option(
    "--variant",
    metavar="NAME",
    help="Compile this variant of the spec; 'all' for the spec and every variant.",
)

allow_option = click.option(
    "--allow",
    multiple=True,
    metavar="FILE",
    help="A file outside the spec's own folder that 'extends' may name; may be given again.",
)

strict_option = click.option("--strict", is_flag=True, help="Let warnings fail too.")

format_option = click.option(
    "--format",
    "form",
    type=click.Choice(["text", "json", "sarif"]),
    default="text",
    show_default=True,
    help="How problems are printed: text on standard error; JSON or SARIF 2.1.0 on standard "
    "output.",
)


def spec_options(command: Command) -> Command:
    """The options of every command that compiles specs."""
    for option in (allow_option, variant_option, plugin_option):
        command = option(command)
    return command


def load_plugins(files: Sequence[str], form: str = "text") -> Registry:
    """All plugins; prints what is wrong with them and exits where one cannot be used."""
    registry, diagnostics = collect(files)
    if failed(diagnostics):
        print_problems(diagnostics, form, registry=registry)
        sys.exit(ERRORS)
    print_problems(diagnostics)
    return registry


def failed(diagnostics: Iterable[Diagnostic], *, strict: bool = False) -> bool:
    """Whether these problems make the command fail."""
    bad = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return any(diagnostic.severity in bad for diagnostic in diagnostics)


def print_problems(
    diagnostics: Iterable[Diagnostic],
    form: str = "text",
    *,
    accepted: Iterable[Accepted] = (),
    registry: Registry | None = None,
) -> None:
    """Problems as text on standard error, or as JSON or SARIF on standard output.

    Only SARIF tells what was ``accepted``, and asks ``registry`` what the rules say of themselves.
    """
    if form == "json":
        click.echo(json.dumps([_plain(one) for one in diagnostics], ensure_ascii=False, indent=2))
        return
    if form == "sarif":
        from foredge.cli.sarif import sarif_text

        click.echo(sarif_text(diagnostics, accepted, registry or Registry(()), Path.cwd()))
        return
    for diagnostic in diagnostics:
        click.echo(str(diagnostic), err=True)


def _plain(diagnostic: Diagnostic) -> dict[str, str | int]:
    return {
        "file": diagnostic.span.file,
        "line": diagnostic.span.line,
        "column": diagnostic.span.column,
        "severity": diagnostic.severity.value,
        "rule": diagnostic.rule,
        "text": diagnostic.text,
        "consequence": diagnostic.consequence,
        "remedy": diagnostic.remedy,
        "source": diagnostic.source,
    }
