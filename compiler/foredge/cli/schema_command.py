"""``foredge schema``: the JSON Schema an editor uses."""

from __future__ import annotations

import sys

import click

from foredge.cli.common import ERRORS, load_plugins, plugin_option
from foredge.spec.schema_bundle import bundle_text, write


@click.command("schema")
@plugin_option
@click.option("--out", metavar="FILE", help="Write it to FILE instead of standard output.")
def command(plugins: tuple[str, ...], out: str | None) -> None:
    """Print the schema of a spec, the loaded plugins' options included.

    Point the first line of a spec at the file: # yaml-language-server: $schema=FILE
    """
    registry = load_plugins(plugins)
    if out is None:
        click.echo(bundle_text(registry), nl=False)
        return
    try:
        write(registry, out)
    except OSError as reason:
        click.echo(f"{out}: error: it cannot be written: {reason.strerror}", err=True)
        sys.exit(ERRORS)
