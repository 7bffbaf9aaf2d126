"""``foredge watch``: the page in a browser, renewed on every save."""

from __future__ import annotations

import sys
import threading
from importlib.util import find_spec
from pathlib import Path

import click

from foredge.cli.common import print_problems, spec_options

NO_WATCHFILES = """foredge watch needs watchfiles, which is not installed. Install it with:
    pip install 'foredge[watch]'"""


@click.command("watch")
@click.argument("spec")
@click.option(
    "--port",
    type=click.IntRange(0, 65535),
    default=0,
    show_default=True,
    help="Port on 127.0.0.1; 0 takes a free one. With a fixed port the page keeps its ticks.",
)
@spec_options
def command(
    spec: str, port: int, plugins: tuple[str, ...], variant: str | None, allow: tuple[str, ...]
) -> None:
    """Compile SPEC on every save, and serve its page on this machine. Writes no files.

    Errors are shown in the page, with their positions; the last good page stays. Ctrl-C ends it.
    """
    if variant == "all":
        raise click.UsageError("watch takes one variant")
    if not Path(spec).is_file():
        raise click.UsageError(f"there is no file '{spec}'")
    if find_spec("watchfiles") is None:
        click.echo(NO_WATCHFILES, err=True)
        sys.exit(2)
    _run(spec, port, plugins, variant, allow)


def _run(
    spec: str, port: int, plugins: tuple[str, ...], variant: str | None, allow: tuple[str, ...]
) -> None:
    from foredge.watch.board import Board
    from foredge.watch.saves import on_save
    from foredge.watch.server import WatchServer
    from foredge.watch.session import Session

    board = Board()
    session = Session(spec, variant, allow, plugins, tell=print_problems)
    try:
        server = WatchServer(board, port)
    except OSError as failure:
        raise click.UsageError(f"port {port} cannot be used: {failure.strerror}") from failure

    def build() -> None:
        good = session.build(board)
        click.echo(f"{spec}: {'the page is new' if good else 'errors; the last good page stays'}")

    serving = threading.Thread(target=server.serve_forever, daemon=True)
    serving.start()
    click.echo(f"watching {spec}; open {server.url} (Ctrl-C ends)")
    try:
        build()
        on_save(session.files, build)
    except KeyboardInterrupt:
        click.echo("")
    finally:
        board.close()
        server.shutdown()
        server.server_close()
