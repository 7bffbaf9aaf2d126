"""``foredge new``: a spec to begin with."""

from __future__ import annotations

import sys
from importlib.resources import files
from pathlib import Path

import click

from foredge.cli.common import ERRORS


@click.command("new")
@click.argument("spec")
@click.option("--title", default="My first book", show_default=True, help="The book's title.")
def command(spec: str, title: str) -> None:
    """Write a small spec to SPEC, with a remark on each line. Never overwrites."""
    text = (
        files("foredge.cli")
        .joinpath("starter.yaml")
        .read_text("utf-8")
        .replace("@TITLE@", _quoted(title))
    )
    try:
        with Path(spec).open("x", encoding="utf-8", newline="\n") as file:
            file.write(text)
    except FileExistsError:
        click.echo(
            f"{spec}: error: there is a file of that name already; nothing was written", err=True
        )
        sys.exit(ERRORS)
    except OSError as reason:
        click.echo(f"{spec}: error: it cannot be written: {reason.strerror}", err=True)
        sys.exit(ERRORS)
    click.echo(f"wrote {spec}; next: foredge check {spec}")


def _quoted(title: str) -> str:
    return "'" + title.replace("'", "''").replace("\n", " ") + "'"
