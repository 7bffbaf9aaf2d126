"""What several commands share: options, loading plugins, printing problems."""

from __future__ import annotations

import json
import sys
from collections.abc import Callable, Iterable, Sequence
from typing import Any, TypeVar

import click

from foredge.contract import Diagnostic, Severity
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
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="How problems are printed: text on standard error, or JSON on standard output.",
)


def spec_options(command: Command) -> Command:
    """The options of every command that compiles specs."""
    for option in (allow_option, variant_option, plugin_option):
        command = option(command)
    return command


def load_plugins(files: Sequence[str]) -> Registry:
    """All plugins; prints what is wrong with them and exits where one cannot be used."""
    registry, diagnostics = collect(files)
    print_problems(diagnostics)
    if failed(diagnostics):
        sys.exit(ERRORS)
    return registry


def failed(diagnostics: Iterable[Diagnostic], *, strict: bool = False) -> bool:
    """Whether these problems make the command fail."""
    bad = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return any(diagnostic.severity in bad for diagnostic in diagnostics)


def print_problems(diagnostics: Iterable[Diagnostic], form: str = "text") -> None:
    """Problems as text on standard error, or as JSON on standard output."""
    if form == "json":
        click.echo(json.dumps([_plain(one) for one in diagnostics], ensure_ascii=False, indent=2))
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
