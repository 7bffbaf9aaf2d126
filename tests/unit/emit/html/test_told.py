"""Texts made harmless for Markdown come out of HTML as they went in; units are laid together."""

import html5lib
import pytest
from hypothesis import given, strategies as st
from markupsafe import Markup

from foredge.emit.escape import code, escape, one_line
from foredge.emit.html.told import as_html, as_text, harmless, switched, told
from foredge.emit.overview import glance
from unit.emit.sample import sample


@given(st.text())
def test_what_was_escaped_for_markdown_shows_in_html_as_it_was_written(words: str) -> None:
    shown = html5lib.parseFragment(str(as_html(escape(words))), namespaceHTMLElements=False)
    assert "".join(shown.itertext()) == one_line(words)
    assert len(shown) == 0


@given(st.text())
def test_plain_words_come_back(words: str) -> None:
    assert as_text(escape(words)) == one_line(words)


def test_code_and_strong_words_stay_what_they_are() -> None:
    assert as_html(code("a<b")) == Markup("<code>a&lt;b</code>")
    assert as_html("**STOP** now") == Markup("<strong>STOP</strong> now")
    assert as_html(r"\*\*not\*\*") == Markup("**not**")


def test_the_marks_that_turn_the_reading_round_are_gone() -> None:
    assert harmless("a\u202eb\u2066c\x00d\ne") == "abcd e"


@pytest.mark.parametrize("shown", ["metric", "imperial", "both"])
def test_a_text_in_three_systems(shown: str) -> None:
    made = switched(("25 mm", '1" <in>', "25 mm (1 in)"), shown)
    element = html5lib.parseFragment(str(made), namespaceHTMLElements=False)[0]
    attributes = {"data-m": "25 mm", "data-i": '1" <in>', "data-b": "25 mm (1 in)"}
    assert element.attrib == attributes
    assert (
        element.text == attributes[{"metric": "data-m", "imperial": "data-i"}.get(shown, "data-b")]
    )


def test_what_is_the_same_in_all_systems_needs_no_element() -> None:
    assert switched(("7", "7", "7"), "metric") == Markup("7")


def test_a_view_keeps_its_shape() -> None:
    build = sample(display="imperial")
    rows = told(build, glance)
    assert [label for label, _ in rows] == [label for label, _ in glance(build)]
    assert all(isinstance(value, Markup) for _, value in rows)
