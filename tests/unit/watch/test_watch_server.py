"""The watching server, asked over a real connection."""

import http.client
import json
import socket
import threading
from collections.abc import Iterator

import pytest

from foredge.emit.html_page import BenchPage
from foredge.watch.board import Board
from foredge.watch.server import WatchServer
from unit.emit.sample import sample

FILES = {"drawings/a.svg": b"<svg/>", "cut-list.csv": b"piece\n"}


@pytest.fixture
def server() -> Iterator[WatchServer]:
    board = Board()
    made = WatchServer(board)
    thread = threading.Thread(target=made.serve_forever, daemon=True)
    thread.start()
    board.put({**FILES, **BenchPage().emit(sample())}, ())
    yield made
    board.close()
    made.shutdown()
    made.server_close()
    thread.join(timeout=10)


def ask(
    server: WatchServer, path: str, method: str = "GET", host: str | None = None
) -> tuple[int, dict[str, str], bytes]:
    connection = http.client.HTTPConnection("127.0.0.1", server.server_port, timeout=10)
    connection.putrequest(method, path, skip_host=True)
    connection.putheader("Host", host or f"127.0.0.1:{server.server_port}")
    connection.endheaders()
    answer = connection.getresponse()
    content = answer.read()
    connection.close()
    return answer.status, {key.lower(): value for key, value in answer.getheaders()}, content


def test_it_serves_the_builds_files_and_says_what_they_are(server) -> None:
    assert ask(server, "/drawings/a.svg")[0] == 200
    status, headers, content = ask(server, "/cut-list.csv?x=1")
    assert (status, content) == (200, b"piece\n")
    assert headers["content-type"].startswith("text/csv")
    assert headers["x-content-type-options"] == "nosniff"
    assert ask(server, "/cut-list.csv", "HEAD")[2] == b""


@pytest.mark.parametrize(
    "path",
    [
        "/../pyproject.toml",
        "/%2e%2e/%2e%2e/etc/passwd",
        "//etc/passwd",
        "/drawings/../../etc/passwd",
        "/drawings/..%5c..%5csecret",
        "/drawings",
        "/cut-list.csv%00.html",
        "/-/../server.py",
        "/etc/passwd",
    ],
)
def test_nothing_else_is_served(server, path: str) -> None:
    status, _, content = ask(server, path)
    assert status == 404 and content == b"no such file in this build\n"


@pytest.mark.parametrize("host", ["example.org", "127.0.0.1.example.org", "127.0.0.1", "[::1]:1"])
def test_another_name_is_refused(server, host: str) -> None:
    for path in ("/", "/cut-list.csv", "/-/changes"):
        assert ask(server, path, host=host)[0] == 421


def test_it_is_not_to_be_reached_from_other_machines(server) -> None:
    assert server.server_address[0] == "127.0.0.1"
    assert ask(server, "/", host=f"localhost:{server.server_port}")[0] == 200


def test_only_reading_is_allowed(server) -> None:
    for method in ("POST", "PUT", "DELETE", "OPTIONS"):
        assert ask(server, "/", method)[0] == 501


def test_the_page_gets_its_script_and_the_policy_lets_in_nothing_more(server) -> None:
    _, _, content = ask(server, "/")
    text = content.decode()
    assert '<script src="/-/watch.js" data-page="1"></script>\n</body>' in text
    plain = BenchPage().emit(sample())["build-sheet.html"].decode()
    assert (
        text.replace("connect-src 'self'; script-src 'self' ", "script-src ").replace(
            '<script src="/-/watch.js" data-page="1"></script>\n', ""
        )
        == plain
    )
    assert ask(server, "/-/watch.js")[1]["content-type"].startswith("text/javascript")


def events(server: WatchServer) -> Iterator[dict[str, object]]:
    with socket.create_connection(("127.0.0.1", server.server_port), timeout=20) as line:
        host = f"127.0.0.1:{server.server_port}"
        line.sendall(f"GET /-/changes HTTP/1.1\r\nHost: {host}\r\n\r\n".encode())
        for row in line.makefile("rb"):
            if row.startswith(b"data: "):
                yield json.loads(row[6:])


def test_changes_are_told_at_once_and_the_last_good_page_stays(server) -> None:
    told = events(server)
    assert next(told) == {"page": 1, "problems": []}
    server.board.put(None, ["book.yaml:4:1: error: <b>"])
    assert next(told) == {"page": 1, "problems": ["book.yaml:4:1: error: <b>"]}
    assert b'data-page="1"' in ask(server, "/")[2]
    assert ask(server, "/cut-list.csv")[0] == 200
    server.board.put({"cut-list.csv": b"new"}, ())
    assert next(told) == {"page": 2, "problems": []}
    assert ask(server, "/cut-list.csv")[2] == b"new"
    assert ask(server, "/drawings/a.svg")[0] == 404


def test_without_a_page_there_is_one_that_waits() -> None:
    server = WatchServer(Board())
    thread = threading.Thread(target=server.serve_forever, daemon=True)
    thread.start()
    text = ask(server, "/")[2].decode()
    assert "There is no page yet" in text and '/-/watch.js" data-page="0"' in text
    server.shutdown()
    server.server_close()
