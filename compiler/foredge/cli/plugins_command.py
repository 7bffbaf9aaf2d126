"""``foredge plugins``: what is installed, and whose it is."""

from __future__ import annotations

import click

from foredge.cli.common import load_plugins, plugin_option


@click.command("plugins")
@plugin_option
def command(plugins: tuple[str, ...]) -> None:
    """List every plugin: kind, name, owner, version."""
    rows = [("kind", "name", "owner", "version")]
    for known in load_plugins(plugins).all():
        rows.append((known.plugin.kind, known.plugin.name, known.owner, known.version))
    widths = [max(len(row[column]) for row in rows) for column in range(4)]
    for row in rows:
        click.echo(
            "  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip()
        )
