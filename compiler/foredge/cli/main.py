"""``foredge``: the group, and the lazy loading of its commands."""

from __future__ import annotations

from importlib import import_module

import click

import foredge

_COMMANDS = ("build", "check", "explain", "new", "plugins", "schema", "watch")


class _Lazy(click.Group):
    """A group whose commands live in ``foredge.cli.<name>`` and load when they are used."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        return list(_COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        if cmd_name not in _COMMANDS:
            return None
        command: click.Command = import_module(f"foredge.cli.{cmd_name}_command").command
        return command


@click.group(cls=_Lazy, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(foredge.__version__, prog_name="foredge")
def main() -> None:
    """Compile the spec of one handmade, decorated book into what its maker needs at the bench.

    Exit status: 0 done (warnings allowed), 1 errors, 2 wrong use of the command.
    """
