import pytest
from hypothesis import given, strategies as st

from foredge.emit.escape import code, escape, one_line

HOSTILE = [
    '</script><b>"&',
    "<img src=x onerror=alert(1)>",
    "# heading",
    "## two",
    "- item",
    "+ item",
    "1. item",
    "12) item",
    "> quote",
    "---",
    "===",
    "***",
    "```\ncode\n```",
    "~~~",
    "a | b | c",
    "*loud* _quiet_ **x** __y__",
    "[link](javascript:alert(1))",
    "![picture](x.png)",
    "`tick` ``two``",
    "line\nbreak\r\nand\u2028more",
    "turn\u202eround",
    "back\\slash",
    "&lt;already&gt;",
    "    indented",
    "$x^2$",
]


def spans(markdown: str) -> list[str]:
    parser = pytest.importorskip("markdown_it")
    tokens = parser.MarkdownIt("gfm-like", {"linkify": False}).parse(markdown)
    kinds = [token.type for token in tokens]
    return kinds + [child.type for token in tokens for child in token.children or ()]


def shown(markdown: str) -> str:
    parser = pytest.importorskip("markdown_it")
    tokens = parser.MarkdownIt("gfm-like", {"linkify": False}).parse(markdown)
    return "".join(
        child.content for token in tokens for child in token.children or () if child.content
    )


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_words_are_plain_words(text: str) -> None:
    line = escape(text)
    assert "\n" not in line
    assert set(spans(line)) <= {"paragraph_open", "inline", "paragraph_close", "text"} | {
        "text_special"
    }
    assert shown(line) == one_line(text)


@given(st.text(max_size=40))
def test_any_words_are_plain_words(text: str) -> None:
    line = escape(text)
    assert set(spans(line)) <= {"paragraph_open", "inline", "paragraph_close", "text"} | {
        "text_special"
    }
    assert shown(line) == one_line(text)


@given(st.text(max_size=40))
def test_any_words_fit_into_a_heading_a_list_and_a_cell(text: str) -> None:
    line = escape(text) or "x"
    assert spans(f"# {line}").count("heading_open") == 1
    kinds = spans(f"1. {line}")
    assert kinds.count("list_item_open") == 1 and "heading_open" not in kinds
    cells = spans(f"| a | b |\n| --- | --- |\n| {line} | y |")
    assert cells.count("td_open") == 2


def test_words_inside_a_name_keep_their_underscore() -> None:
    assert escape("text_block.leaf_width") == "text_block.leaf_width"


def test_code_spans_hold() -> None:
    assert code("case.board") == "`case.board`"
    assert code("a`b|c\nd") == "`a'b/c d`"
