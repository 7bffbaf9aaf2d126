"""The one hook. pluggy only collects what plugins bring; order never comes from it."""

from __future__ import annotations

from collections.abc import Sequence

import pluggy

from foredge.contract.plugin import Plugin

PROJECT = "foredge"
hookspec = pluggy.HookspecMarker(PROJECT)
hookimpl = pluggy.HookimplMarker(PROJECT)


class HookSpecs:
    """What a distribution or a file may implement."""

    @hookspec
    def foredge_plugins(self) -> Sequence[Plugin]:
        """The plugin objects this module brings."""
        return ()
