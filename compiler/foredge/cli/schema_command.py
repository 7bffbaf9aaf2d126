"""``foredge schema``: the JSON Schema an editor uses."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import click

from foredge.cli.common import ERRORS, load_plugins, plugin_option
from foredge.spec.schema import bundle


@click.command("schema")
@plugin_option
@click.option("--out", metavar="FILE", help="Write it to FILE instead of standard output.")
def command(plugins: tuple[str, ...], out: str | None) -> None:
    """Print the schema of a spec, the loaded plugins' options included.

    Point the first line of a spec at the file: # yaml-language-server: $schema=FILE
    """
    text = json.dumps(bundle(load_plugins(plugins)), ensure_ascii=False, indent=2) + "\n"
    if out is None:
        click.echo(text, nl=False)
        return
    try:
        Path(out).write_text(text, encoding="utf-8", newline="\n")
    except OSError as reason:
        click.echo(f"{out}: error: it cannot be written: {reason.strerror}", err=True)
        sys.exit(ERRORS)
