"""``foredge check``: is the spec sound, and what will go wrong at the bench?"""

from __future__ import annotations

import sys

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


@click.command("check")
@click.argument("specs", nargs=-1, required=True, metavar="SPEC...")
@spec_options
@format_option
@strict_option
def command(
    specs: tuple[str, ...],
    plugins: tuple[str, ...],
    variant: str | None,
    allow: tuple[str, ...],
    form: str,
    strict: bool,
) -> None:
    """Check specs and report every problem with its place, consequence and remedy."""
    registry = load_plugins(plugins)
    found = [
        one for _, _, run in compile_all(specs, registry, variant, allow) for one in run.diagnostics
    ]
    print_problems(dict.fromkeys(found), form)
    if failed(found, strict=strict):
        sys.exit(ERRORS)
