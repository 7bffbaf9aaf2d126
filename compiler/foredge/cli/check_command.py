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
from foredge.cli.rule_list import print_rules
from foredge.cli.runs import compile_all


@click.command("check")
@click.argument("specs", nargs=-1, metavar="SPEC...")
@spec_options
@format_option
@strict_option
@click.option("--rules", is_flag=True, help="List the rules with their sources; checks nothing.")
def command(
    specs: tuple[str, ...],
    plugins: tuple[str, ...],
    variant: str | None,
    allow: tuple[str, ...],
    form: str,
    strict: bool,
    rules: bool,
) -> None:
    """Check specs and report every problem with its place, consequence and remedy."""
    if not specs and not rules:
        raise click.UsageError("name at least one SPEC")
    if rules and form == "sarif":
        raise click.UsageError("the list of rules is printed as text or json")
    registry = load_plugins(plugins, form)
    if rules:
        print_rules(registry, form)
        return
    runs = [run for _, _, run in compile_all(specs, registry, variant, allow)]
    found = list(dict.fromkeys(one for run in runs for one in run.diagnostics))
    consents = [one for run in runs for one in run.accepted]
    print_problems(found, form, accepted=consents, registry=registry)
    if failed(found, strict=strict):
        sys.exit(ERRORS)
