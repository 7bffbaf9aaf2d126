"""Stages run in order, fail as one problem, and are not trusted."""

from dataclasses import dataclass, field

import pytest

from foredge.contract import (
    LENGTH,
    Operation,
    Options,
    Origin,
    Piece,
    Quantity,
    StageResult,
    Upstream,
    leaf,
    number,
    say,
)
from foredge.stages import run_stages

BOOK = None


def mm(value: float, name: str) -> Quantity:
    return leaf(value, LENGTH, name, Origin("spec"))


@dataclass
class Fake:
    name: str
    result: object
    needs: tuple[str, ...] = ()
    kind: str = "stage"
    title: str = "A stage"
    options: type[Options] = Options
    seen: list[Upstream] = field(default_factory=list)

    @property
    def section(self) -> str:
        return self.name.replace("-", "_")

    prefix = section

    def run(self, book, upstream):
        self.seen.append(upstream)
        if isinstance(self.result, Exception):
            raise self.result
        return self.result


def test_a_stage_sees_only_what_it_needs() -> None:
    first = Fake("first", StageResult(quantities=(mm(1, "first.a"),)))
    second = Fake("second", StageResult(quantities=(mm(1, "second.a"),)))
    third = Fake("third", StageResult(), needs=("first",))
    ran, problems = run_stages((first, second, third), BOOK)
    assert problems == []
    assert [stage.name for stage, _ in ran] == ["first", "second", "third"]
    upstream = third.seen[0]
    assert upstream.quantity("first.a").value == 1
    with pytest.raises(KeyError, match="does the stage need"):
        upstream.quantity("second.a")


def test_an_exception_is_one_problem_and_the_run_stops() -> None:
    broken = Fake("broken", ZeroDivisionError("division by zero"))
    after = Fake("after", StageResult())
    ran, problems = run_stages((broken, after), BOOK)
    assert ran == ()
    assert after.seen == []
    assert len(problems) == 1
    assert problems[0].path == ("broken",)
    assert "the stage 'broken' failed in" in problems[0].text
    assert "ZeroDivisionError: division by zero" in problems[0].text


@pytest.mark.parametrize(
    ("result", "says"),
    [
        (StageResult(quantities=(mm(1, "other.a"),)), "does not start with 'stage.'"),
        (StageResult(quantities=(mm(1, "stage.a"), mm(2, "stage.a"))), "is there twice"),
        (StageResult(quantities=(mm(1, "stage.a") + mm(1, "x"),)), "without a name"),
        (
            StageResult(quantities=((number(1) / 0).named("stage.a"),)),
            "is not a finite number",
        ),
        (
            StageResult(operations=(Operation("case.cut", "Cut", (say("Cut."),), number(1)),)),
            "does not start with 'stage.'",
        ),
        (
            StageResult(pieces=(Piece("stage.b", "b", number(1), mm(-3, "w"), mm(5, "h"), "any"),)),
            "the piece 'stage.b' would be -3 by 5 mm",
        ),
    ],
)
def test_results_are_verified(result: StageResult, says: str) -> None:
    ran, problems = run_stages((Fake("stage", result),), BOOK)
    assert ran == ()
    assert [says in problem.text for problem in problems] == [True]
