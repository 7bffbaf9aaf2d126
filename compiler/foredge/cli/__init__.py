"""The command line: one file a command, imported only when it is asked for."""

from foredge.cli.main import main

__all__ = ["main"]
