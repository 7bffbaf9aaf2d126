"""Customary units beside the metric ones of a sentence."""

import pytest
from hypothesis import given, strategies as st

from foredge.display_beside import beside


@pytest.mark.parametrize(
    ("metric", "both"),
    [
        ("a leaf 25.4 mm narrower", "a leaf 25.4 mm (1 in) narrower"),
        ("from 12.7 to 25.4 mm high.", "from 12.7 to 25.4 mm (1/2 to 1 in) high."),
        ("254 × 127 mm", "254 × 127 mm (10 × 5 in)"),
        ("254 mm by 127 mm", "254 mm (10 in) by 127 mm (5 in)"),
        ("board of 0.8 mm", "board of 0.8 mm (0.031 in)"),
        ("about 489 g", "about 489 g (1.08 lb)"),
        ("12 ml of glue", "12 ml (0.41 fl oz) of glue"),
    ],
)
def test_a_measure_gets_its_other_reading(metric: str, both: str) -> None:
    assert beside(metric) == both


@pytest.mark.parametrize(
    "text",
    [
        "write '3 mm' where 'three' stands",
        "paper of 90 g/m2, 90 g/m² or 0.7 g/cm³",
        "0.71 mm (0.68 to 0.75)",
        "the maker's board waits 3 minutes in 2 g4 mmm",
        "no number mm",
        "steps 1.2 and 3.4",
    ],
)
def test_what_is_no_measure_or_is_quoted_stays(text: str) -> None:
    assert beside(text) == text


@given(st.text(alphabet=st.sampled_from("0123456789. 'mcgl²/tobyand×()`"), max_size=60))
def test_nothing_of_the_sentence_is_lost(text: str) -> None:
    left = iter(beside(text))
    assert all(letter in left for letter in text)
