"""Accepting a rule: by name, by place, never an error, never for nothing."""

from foredge.accept import apply_accepts
from foredge.problem import error, warning

GRAIN = warning(("text_block", "paper"), "the grain runs across", "grain-across-spine")
JOINT = warning(("case", "joint"), "the joint is narrow", "joint-narrow")
LARGE = error(("case", "square"), "larger than the leaf", "square-too-large", remedy="Make it less")


def entry(rule: str, at: str | None = None) -> dict[str, str]:
    plain = {"rule": rule, "because": "practice copy"}
    return plain if at is None else {**plain, "at": at}


def test_a_warning_is_silenced_by_name_and_kept_with_its_reason() -> None:
    left, accepted = apply_accepts([GRAIN, JOINT], [entry("grain-across-spine")])
    assert left == [JOINT]
    assert [(one.problem, one.because) for one in accepted] == [(GRAIN, "practice copy")]


def test_a_place_narrows_it() -> None:
    left, _ = apply_accepts([GRAIN], [entry("grain-across-spine", "text_block")])
    assert left == []
    left, _ = apply_accepts([GRAIN], [entry("grain-across-spine", "case")])
    assert [one.rule for one in left] == ["grain-across-spine", "accept-unused"]


def test_a_place_is_whole_steps_not_letters() -> None:
    left, _ = apply_accepts([GRAIN], [entry("grain-across-spine", "text")])
    assert GRAIN in left


def test_an_error_stays_and_says_so() -> None:
    left, accepted = apply_accepts([LARGE], [entry("square-too-large")])
    assert accepted == []
    assert [one.remedy for one in left] == ["Make it less. An error cannot be accepted"]


def test_an_entry_that_matches_nothing_is_a_warning_at_its_place() -> None:
    left, _ = apply_accepts([], [entry("grain-acros-spine")])
    assert [(one.rule, one.path) for one in left] == [("accept-unused", ("accept", 0, "rule"))]


def test_an_entry_that_repeats_another_is_told_so() -> None:
    left, accepted = apply_accepts([GRAIN], [entry("grain-across-spine")] * 2)
    assert len(accepted) == 1
    assert [one.path for one in left] == [("accept", 1, "rule")]
    assert left[0].text.startswith("an entry above names 'grain-across-spine' already")


def test_a_misspelt_rule_is_led_to_the_right_one() -> None:
    left, _ = apply_accepts([GRAIN], [entry("grain-acros-spine")])
    assert left[-1].remedy == "Did you mean grain-across-spine?"
