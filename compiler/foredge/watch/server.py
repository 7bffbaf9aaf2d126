"""The server behind ``foredge watch``: this machine only, this build's files only."""

from __future__ import annotations

import json
from http import HTTPStatus
from http.server import BaseHTTPRequestHandler, ThreadingHTTPServer
from urllib.parse import unquote, urlsplit

from foredge.watch.board import Board
from foredge.watch.live import CHANGES_PATH, SCRIPT_PATH, live_page, watch_script

HOST = "127.0.0.1"
HEARTBEAT_S = 15.0
"""A stream that has nothing to tell says so this often, and finds out that nobody listens."""

_TYPES = {
    "css": "text/css; charset=utf-8",
    "csv": "text/csv; charset=utf-8",
    "html": "text/html; charset=utf-8",
    "ics": "text/calendar; charset=utf-8",
    "js": "text/javascript; charset=utf-8",
    "json": "application/json",
    "md": "text/markdown; charset=utf-8",
    "pdf": "application/pdf",
    "svg": "image/svg+xml",
}


class WatchServer(ThreadingHTTPServer):
    """Serves one board on 127.0.0.1; ``port`` 0 takes a free one."""

    daemon_threads = True

    def __init__(self, board: Board, port: int = 0) -> None:
        self.board = board
        super().__init__((HOST, port), _Handler)

    @property
    def url(self) -> str:
        """Where the page is."""
        return f"http://{HOST}:{self.server_port}/"

    def answers_to(self, host: str) -> bool:
        """Whether a request that calls this server ``host`` is meant for it.

        A page from elsewhere can make its own name point here, and would then be taken for
        this server's own page; its requests carry that name.
        """
        return host.lower() in {f"{HOST}:{self.server_port}", f"localhost:{self.server_port}"}


class _Handler(BaseHTTPRequestHandler):
    server: WatchServer
    server_version = "foredge"
    sys_version = ""
    protocol_version = "HTTP/1.1"

    def do_GET(self) -> None:
        """A file, the page, the script, or the stream of changes."""
        self._answer(body=True)

    def do_HEAD(self) -> None:
        """The same without its content."""
        self._answer(body=False)

    def log_message(self, format: str, *args: object) -> None:
        """Nothing: the terminal is for the spec's problems."""

    def _answer(self, *, body: bool) -> None:
        if not self.server.answers_to(self.headers.get("Host", "")):
            self._send(HTTPStatus.MISDIRECTED_REQUEST, "txt", b"not the name of this server\n")
            return
        path = unquote(urlsplit(self.path).path)
        if path == CHANGES_PATH and body:
            self._stream()
            return
        found = self._find(path)
        if found is None:
            self._send(HTTPStatus.NOT_FOUND, "txt", b"no such file in this build\n", body=body)
        else:
            self._send(HTTPStatus.OK, found[0], found[1], body=body)

    def _find(self, path: str) -> tuple[str, bytes] | None:
        """Suffix and content. Files are looked up by name in the build, never on the disk."""
        if path in ("/", "/build-sheet.html"):
            return "html", live_page(self.server.board.shown)
        if path == SCRIPT_PATH:
            return "js", watch_script()
        content = self.server.board.shown.files.get(path.removeprefix("/"))
        return None if content is None else (path.rpartition(".")[2], content)

    def _send(self, status: HTTPStatus, suffix: str, content: bytes, *, body: bool = True) -> None:
        self.send_response(status)
        self.send_header("Content-Type", _TYPES.get(suffix, "text/plain; charset=utf-8"))
        self.send_header("Content-Length", str(len(content)))
        self._send_guards()
        if suffix != "html":
            self.send_header("Content-Security-Policy", "default-src 'none'")
        self.end_headers()
        if body:
            self.wfile.write(content)

    def _send_guards(self) -> None:
        self.send_header("Cache-Control", "no-store")
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("X-Frame-Options", "DENY")
        self.send_header("Cross-Origin-Resource-Policy", "same-origin")

    def _stream(self) -> None:
        """Server-sent events (WHATWG HTML, 9.2): what is shown now, then every change."""
        self.send_response(HTTPStatus.OK)
        self.send_header("Content-Type", "text/event-stream; charset=utf-8")
        self.send_header("Connection", "close")
        self._send_guards()
        self.end_headers()
        self.close_connection = True
        board, turn = self.server.board, -1
        try:
            while not board.closed:
                shown = board.wait(turn, HEARTBEAT_S)
                if shown is None:
                    self.wfile.write(b": nothing new\n\n")
                else:
                    turn = shown.turn
                    told = json.dumps({"page": shown.page, "problems": shown.problems})
                    self.wfile.write(f"data: {told}\n\n".encode())
                self.wfile.flush()
        except OSError:
            return  # the page was closed
