"""The page as the watching server gives it: the same page, and a script that renews it."""

from __future__ import annotations

from functools import cache
from importlib.resources import files

from foredge.emit.html.page import inlined, policy, template
from foredge.watch.board import Shown

SCRIPT_PATH = "/-/watch.js"
CHANGES_PATH = "/-/changes"

_SCRIPTS = b"script-src "
_END = b"</body>"


def live_page(shown: Shown) -> bytes:
    """The last good page, or a page that tells why there is none yet.

    The page's policy is opened for this server's script and its stream of changes, and for
    nothing else.
    """
    page = shown.files.get("build-sheet.html")
    return _with_script(_empty_page() if page is None else page, shown)


def _with_script(page: bytes, shown: Shown) -> bytes:
    head, found, rest = page.partition(_SCRIPTS)
    body, end, tail = rest.rpartition(_END)
    if not found or not end:
        raise ValueError("the page has no policy or no end to add the script to")
    tag = f'<script src="{SCRIPT_PATH}" data-page="{shown.page}"></script>\n'
    opened = b"connect-src 'self'; script-src 'self' "
    return head + opened + body + tag.encode() + end + tail


@cache
def _empty_page() -> bytes:
    style = inlined("bench.css")
    return template("waiting.html.j2").render(style=style, policy=policy(style, "")).encode()


@cache
def watch_script() -> bytes:
    """The script that the page is given."""
    return files("foredge.watch").joinpath("watch.js").read_bytes()
