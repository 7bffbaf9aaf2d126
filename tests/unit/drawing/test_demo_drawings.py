"""No words overlap or leave the page in any drawing of the demo books."""

import pytest

from demo import DEMOS, compiled
from foredge.drawing.textbox import overlaps
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.svg import marked


@pytest.mark.parametrize("run", DEMOS, ids=lambda run: f"{run.spec}@{run.variant}")
def test_words_keep_clear_of_each_other(run) -> None:
    drawings = all_drawings(compiled(run))
    assert {one.name: overlaps(marked(one)) for one in drawings if overlaps(marked(one))} == {}
