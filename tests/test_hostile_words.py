"""Whatever a maker writes is only words, in every file of every emitter.

The same book is compiled twice, once with plain words and once with hostile ones, and the files
must have the same bones: the same Markdown blocks, the same HTML elements, the same columns, the
same calendar properties. A file with a suffix that no check knows fails.
"""

from __future__ import annotations

import csv
import io
import json
import re
from collections.abc import Callable
from functools import cache
from html.parser import HTMLParser
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory
from xml.etree import ElementTree

import pytest
from markdown_it import MarkdownIt

from foredge.compile import compile_spec
from foredge.emit import emit
from foredge.registry import collect

REGISTRY, _ = collect(entry_points=False)
PLAIN = tuple(f"Plain words {letter}" for letter in "abcdefghijklmnop")

LETTERED = '</script><b>"&='

HOSTILE = {
    "closing-tags": "</script></style></title><b>\"&'<blink>",
    "events": "<img src=x onerror=alert(1)>",
    "cdata": "]]><script>alert(1)</script><!--",
    "formula": '=HYPERLINK("http://x.invalid","x")',
    "formula-at": "@SUM(1+1)*cmd|' /C calc'!A0",
    "minus": "-2+3+cmd",
    "lines": "one\ntwo\r\nthree\u2028four",
    "calendar": "x\nEND:VEVENT\nATTACH:http://x.invalid/;x=1,2",
    "control": "bell\u0007 back\u0008 escape\u001b[31m turn\u202eround",
    "table": "a | b || c |\n|---|---|",
    "code": "`tick` ``two`` ```three",
    "link": "[x](javascript:alert(1)) <javascript:alert(1)> ![x](http://x.invalid/x.png)",
    "heading": "# not a heading\n- [ ] no box\n> no quote",
    "template": "{{ 7 * 7 }} {% raw %} ${x} %s {0} {width}",
    "entity": "&lt;script&gt; &#x3c; &amp;amp;",
    "backslash": "\\ \\n \\u003cscript\\u003e \\) (",
}

SPEC = """
foredge: 1
title: @
stock:
  paper: {kind: sheet, width: 460 mm, height: 640 mm, grain: width, count: 40, grammage: 90 g/m2,
          material: writing, note: @}
  board: {kind: board, width: 500 mm, height: 700 mm, grain: height, count: 3, thickness: 3 mm,
          material: greyboard, note: @}
  canvas: {kind: cloth, width: 600 mm, height: 600 mm, grain: height, thickness: 0.6 mm,
           material: canvas, colour: @, note: @}
  linen: {kind: thread, length: 90 m, size: 35/3, material: linen, colour: @}
  tape: {kind: tape, length: 9 m, width: 13 mm, thickness: 0.3 mm, colour: @}
  pot: {kind: supply, volume: 5 ml, material: @, note: @}
text_block:
  paper: paper
  leaf: {width: 150 mm, height: 205 mm}
  trim: {head: 2 mm, tail: 2 mm, fore_edge: 3 mm}
  gatherings: {count: 10, folios: 4}
  sewing: {use: tapes, thread: linen, tape: tape}
  edges: [{use: sprinkled, colour: @, stock: pot}]
case:
  boards: {use: bought, stock: board}
  covering: {use: full-cloth, material: canvas}
closure: {use: ribbon-tie, ribbon: tape}
embellishment:
  - use: relief
    on: front
    made_on: finished-book
    texture: @
    parts:
      - {use: dome, name: @, diameter: 40 mm, height: 8 mm}
  - {use: lettering, on: back, text: #, colour: @}
finishing:
  - {use: base-coat, on: relief, colour: @, stock: pot}
  - {use: wash, on: relief, colour: @}
  - {use: brush-varnish}
bench:
  start: 2026-12-01
  sessions: ['Mon-Fri 19:00-21:30', 'Sat 14:00-17:00']
accept:
  - {rule: swell-large, because: @}
  - {rule: relief-high, because: @}
  - {rule: clay-too-thick, because: @}
"""


RUNS = 4
"""Books that are compiled: in each of them every place has another of the words."""

Words = tuple[str, ...]


@cache
def files_of(words: Words) -> dict[str, bytes]:
    """Every file of the book with ``words``, one after the other, wherever a maker writes some.

    The title has all that the run begins with.
    """
    title, *rest = SPEC.split("@")
    title += json.dumps(" ".join(words[: len(HOSTILE) // RUNS]))
    spec = title + "".join(
        (json.dumps(words[place % len(words)]) if place else "") + part
        for place, part in enumerate(rest)
    )
    # The letters cost time and paint, so both books have the same ones.
    spec = spec.replace(": #", f": {json.dumps(LETTERED)}", 1)
    with TemporaryDirectory() as folder:
        file = Path(folder) / "book.yaml"
        file.write_text(spec, encoding="utf-8")
        run = compile_spec(str(file), REGISTRY)
        assert run.build is not None, [one.text for one in run.diagnostics]
        return emit(run.build)


def _turned(turn: int) -> Words:
    words = tuple(HOSTILE.values())
    start = turn * len(words) // RUNS
    return words[start:] + words[:start]


@pytest.mark.parametrize("turn", range(RUNS))
def test_hostile_words_are_harmless_in_every_file(turn: int) -> None:
    words = _turned(turn)
    plain, hostile = files_of(PLAIN), files_of(words)
    assert hostile.keys() == plain.keys()
    for path, content in hostile.items():
        suffix = PurePosixPath(path).suffix
        assert suffix in CHECKS, f"nothing checks {path}"
        CHECKS[suffix](path, content, plain[path])
        if suffix in (".html", ".svg"):
            raw = [one for one in (*words, LETTERED) if "<" in one and one.encode() in content]
            assert not raw, path


def test_the_hostile_words_get_into_the_files() -> None:
    """Else the test above would show nothing."""
    found = files_of(_turned(0))
    assert b"onerror" in found["build-sheet.md"]
    assert b"HYPERLINK" in b"".join(found.values())
    assert {PurePosixPath(path).suffix for path in found} == set(CHECKS)


def _text(content: bytes) -> str:
    text = content.decode("utf-8")
    odd = {char for char in text if not char.isprintable() and char not in "\n\r\t"}
    assert not odd, [hex(ord(char)) for char in odd]
    return text


def _markdown(path: str, content: bytes, plain: bytes) -> None:
    parser = MarkdownIt("gfm-like", {"linkify": False, "html": True})
    tokens, bones = parser.parse(_text(content)), parser.parse(plain.decode())
    assert [one.type for one in tokens] == [one.type for one in bones], path
    inline = {child.type for one in tokens for child in one.children or ()}
    assert inline <= {child.type for one in bones for child in one.children or ()}, path
    assert "html_inline" not in inline, path
    links = [child.attrs.get("href") for one in tokens for child in one.children or ()]
    known = [child.attrs.get("href") for one in bones for child in one.children or ()]
    assert {href for href in links if href} == {href for href in known if href}, path
    for row in _rows(parser, _text(content)):
        assert len(set(row)) == 1, path


def _rows(parser: MarkdownIt, text: str) -> list[list[int]]:
    """Cells in each row, table by table, as written: unescaped bars, code spans left out."""
    tables = []
    for token in parser.parse(text):
        if token.type == "table_open" and token.map:
            lines = text.splitlines()[token.map[0] : token.map[1]]
            tables.append([line.replace("\\|", "").count("|") for line in lines if line.strip()])
    return tables


def _svg(path: str, content: bytes, plain: bytes) -> None:
    _text(content)
    for element in ElementTree.fromstring(content).iter():
        name = element.tag.removeprefix("{http://www.w3.org/2000/svg}")
        assert name in {"svg", "title", "rect", "path", "circle", "text"}, path
        assert not any(key.startswith("on") or "href" in key for key in element.attrib), path


def _csv(path: str, content: bytes, plain: bytes) -> None:
    rows = list(csv.reader(io.StringIO(content.decode("utf-8-sig"), newline="")))
    bones = list(csv.reader(io.StringIO(plain.decode("utf-8-sig"), newline="")))
    assert [len(row) for row in rows] == [len(row) for row in bones], path
    for cell in (cell for row in rows for cell in row):
        # What a spreadsheet takes for a formula, unless it is a number.
        assert not cell.startswith(("=", "+", "@", "\t", "\r")), cell
        assert not cell.startswith("-") or cell[1:].replace(".", "").isdigit(), cell


def _json(path: str, content: bytes, plain: bytes) -> None:
    assert _keys(json.loads(content)) == _keys(json.loads(plain)), path


def _keys(value: object) -> object:
    """The bones of JSON: its keys, and its lists' items."""
    if isinstance(value, dict):
        # What the shelf does not list is named after the words, in letters fit for a name.
        named = {re.sub(r"^unlisted\.[a-z0-9-]+\.", "unlisted.", key): key for key in value}
        return {name: _keys(value[key]) for name, key in named.items()}
    return [_keys(item) for item in value] if isinstance(value, list) else None


class _Elements(HTMLParser):
    """Every element with the names of its attributes, and the scripts."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[tuple[str, tuple[str, ...]]] = []
        self.addresses: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.found.append((tag, tuple(sorted(key for key, _ in attrs))))
        self.addresses += [
            value or "" for key, value in attrs if key in ("href", "src", "action", "xlink:href")
        ]


def _elements(content: bytes) -> _Elements:
    parser = _Elements()
    parser.feed(content.decode("utf-8"))
    parser.close()
    return parser


def _html(path: str, content: bytes, plain: bytes) -> None:
    _text(content)
    page, bones = _elements(content), _elements(plain)
    for tag in ("script", "style", "title", "iframe", "img", "object", "link", "meta"):
        assert _count(page, tag) == _count(bones, tag), f"{path}: {tag}"
    assert set(page.found) <= set(bones.found) | set(_drawn(page)), path
    for address in page.addresses:
        assert address.startswith("#") or address in bones.addresses, f"{path}: {address}"


def _count(page: _Elements, tag: str) -> int:
    return sum(name == tag for name, _ in page.found)


def _drawn(page: _Elements) -> list[tuple[str, tuple[str, ...]]]:
    """Paths of a picture may have other attributes with another colour or shape."""
    return [one for one in page.found if one[0] in ("path", "circle", "text")
            and not any(key.startswith("on") for key in one[1])]  # fmt: skip


def _pdf(path: str, content: bytes, plain: bytes) -> None:
    pypdf = pytest.importorskip("pypdf")
    reader, bones = pypdf.PdfReader(io.BytesIO(content)), pypdf.PdfReader(io.BytesIO(plain))
    assert set(reader.trailer["/Root"]) == set(bones.trailer["/Root"]), path
    assert not {"/OpenAction", "/AA", "/Names"} & set(reader.trailer["/Root"]), path
    assert all("/Annots" not in page for page in reader.pages), path


def _ics(path: str, content: bytes, plain: bytes) -> None:
    icalendar = pytest.importorskip("icalendar")
    assert all(len(line) <= 75 for line in content.split(b"\r\n")), path
    names = [
        [[key for key, _ in part.property_items()] for part in calendar.walk()]
        for calendar in (icalendar.Calendar.from_ical(one) for one in (content, plain))
    ]
    assert names[0] == names[1], path


CHECKS: dict[str, Callable[[str, bytes, bytes], None]] = {
    ".md": _markdown,
    ".svg": _svg,
    ".csv": _csv,
    ".json": _json,
    ".html": _html,
    ".pdf": _pdf,
    ".ics": _ics,
}
