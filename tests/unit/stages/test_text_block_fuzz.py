"""Whatever a clean spec says, the stage gives sound numbers or says what is wrong."""

from __future__ import annotations

from typing import Any

from hypothesis import Phase, given, settings, strategies as st

from foredge.contract import Severity
from foredge.plan.order import order
from foredge.stages import verify
from foredge_stages.text_block import PLUGIN
from text_block_books import made


def mm(least: float, most: float) -> st.SearchStrategy[str]:
    return st.floats(least, most).map(lambda value: f"{value:.2f} mm")


LEAF = st.fixed_dictionaries({"width": mm(2, 500), "height": mm(2, 700)})
TRIM = st.one_of(
    st.just("none"),
    st.fixed_dictionaries(
        {}, optional={"head": mm(0, 40), "tail": mm(0, 40), "fore_edge": mm(0, 40)}
    ),
)
GATHERINGS = st.fixed_dictionaries(
    {},
    optional={
        "count": st.integers(1, 100_000),
        "pages": st.integers(1, 100_000),
        "fill": st.just("stock"),
        "folios": st.integers(1, 100_000),
        "shorter": st.lists(st.integers(1, 12), max_size=3),
    },
)
SEWING = st.one_of(
    st.fixed_dictionaries(
        {"use": st.just("tapes")},
        optional={
            "count": st.integers(1, 100_000), "width": mm(1, 60), "kettle": mm(1, 90),
            "outer": mm(1, 300), "lap": mm(1, 90),
        },
    ),
    st.fixed_dictionaries(
        {"use": st.just("link-stitch")},
        optional={
            "stations": st.integers(1, 100_000), "end_distance": mm(1, 300),
            "tail_distance": mm(1, 300), "spacing": mm(0.02, 300), "thread": st.just("linen"),
        },
    ),
)  # fmt: skip
ENDS = st.one_of(
    st.fixed_dictionaries({"use": st.just("tipped")}, optional={"line": mm(1, 300)}),
    st.fixed_dictionaries(
        {"use": st.just("sewn")},
        optional={
            "way": st.sampled_from(["gathering", "hooked"]), "folios": st.integers(1, 9),
            "hook": mm(1, 80),
        },
    ),
    st.fixed_dictionaries(
        {"use": st.just("cloth-jointed")}, optional={"strip": mm(1, 900), "overlap": mm(1, 90)}
    ),
)  # fmt: skip
SHEET = st.fixed_dictionaries(
    {"width": mm(20, 1500), "height": mm(20, 1500)},
    optional={
        "grain": st.sampled_from(["width", "height", "unknown"]),
        "creases": st.lists(
            st.fixed_dictionaries(
                {"along": st.sampled_from(["width", "height"]), "at": mm(1, 1400)}
            ),
            max_size=2,
        ),
    },
)
BLOCK = st.fixed_dictionaries(
    {"leaf": LEAF, "gatherings": GATHERINGS},
    optional={
        "trim": TRIM,
        "edges_torn": st.booleans(),
        "rough": mm(0, 90),
        "grain": st.sampled_from(["along", "prefer-along", "either"]),
        "folded": st.sampled_from([1, 2, 3]),
        "crease": st.sampled_from(["use", "ignore"]),
        "sewing": SEWING,
        "end_papers": ENDS,
        "super": st.fixed_dictionaries({}, optional={"flange": mm(1, 200), "short": mm(0, 200)}),
        "lining": st.fixed_dictionaries(
            {}, optional={"layers": st.integers(0, 4), "short": mm(0, 200)}
        ),
        "inserts": st.fixed_dictionaries(
            {"each": mm(0.01, 9), "pages": st.integers(1, 900)},
            optional={"stubs": st.integers(0, 900)},
        ),
    },
)


@settings(max_examples=80, deadline=None, phases=(Phase.generate,))
@given(SHEET, BLOCK)
def test_sound_or_said(sheet: dict[str, Any], block: dict[str, Any]) -> None:
    result = made({"chart-paper": {"creases": [], **sheet}}, **block)
    assert verify(PLUGIN, result, ()) == []
    assert order(result.operations, ("text-block",), result.gates)[1] == []
    assert sum(len(drawing.items) for drawing in result.drawings) < 2000
    for problem in result.problems:
        assert problem.rule and problem.text and "nan" not in problem.text
        assert problem.severity is not Severity.ERROR or problem.remedy
