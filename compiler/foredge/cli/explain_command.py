"""``foredge explain``: how a number was made, down to the spec line or the published figure."""

from __future__ import annotations

import sys

import click

from foredge.cli.common import ERRORS, failed, load_plugins, print_problems, spec_options
from foredge.compile import compile_spec
from foredge.explain import explain, known, listing, near


@click.command("explain")
@click.argument("spec")
@click.argument("quantity", required=False)
@spec_options
def command(
    spec: str,
    quantity: str | None,
    plugins: tuple[str, ...],
    variant: str | None,
    allow: tuple[str, ...],
) -> None:
    """Explain QUANTITY of SPEC; without it, list every quantity with its value and band."""
    if variant == "all":
        raise click.UsageError("explain takes one variant")
    run = compile_spec(spec, load_plugins(plugins), variant=variant, allow=allow)
    if run.build is None or failed(run.diagnostics):
        print_problems(run.diagnostics)
        sys.exit(ERRORS)
    if quantity is None:
        click.echo(listing(run.build))
        return
    if quantity not in known(run.build):
        names = near(run.build, quantity)
        hint = f"; did you mean {' or '.join(names)}?" if names else ""
        raise click.UsageError(f"{spec} has no quantity '{quantity}'{hint}")
    click.echo(explain(run.build, quantity))
