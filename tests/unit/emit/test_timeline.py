import pytest

from foredge.contract import Bench, Shape
from foredge.drawing.textbox import overlaps
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.timeline import LEFT, MOST_ROWS, WIDTH, timeline_drawings
from work_books import op, planned

BENCH = Bench(start="2026-12-01", sessions=("Tue and Thu 19:30-21:30",))
A4_HEIGHT = 190.0


def drawings(count: int, wait: float = 720, bench: Bench = BENCH, title: str = "Glue"):
    steps = [
        op(f"s{i}", 20, wait=wait, after=(f"s{i - 1}",) if i else (), waiting=title)
        for i in range(count)
    ]
    return timeline_drawings(planned(*steps, bench=bench)[0])


@pytest.mark.parametrize("count", [1, 2, 29, 30, 31, 61])
@pytest.mark.parametrize("bench", [BENCH, Bench(sessions=("Mon-Sun 19:30-21:30",))])
def test_it_fits_the_sheet_and_no_words_overlap(count: int, bench: Bench) -> None:
    made = drawings(count, bench=bench)
    assert len(made) == -(-count // MOST_ROWS)
    for drawing in made:
        assert drawing.width <= WIDTH
        assert drawing.height <= A4_HEIGHT
        assert overlaps(drawing) == []
    names = [drawing.name for drawing in made]
    assert names == (
        ["schedule-timeline"]
        if len(made) == 1
        else [f"schedule-timeline-{i + 1}" for i in range(len(made))]
    )


def test_bars_follow_the_clock() -> None:
    (drawing,) = drawings(1, wait=1440 - 20)
    scale = WIDTH - 3.0 - LEFT  # two days: the evening, and the day on which it is dry
    bars = [item.rings[0] for item in drawing.items if isinstance(item, Shape)]
    dark = [ring for ring in bars if ring[0][0] == pytest.approx(LEFT + scale * 1170 / 2880)]
    grey = [ring for ring in bars if ring[0][0] == pytest.approx(LEFT + scale * 1190 / 2880)]
    assert len(dark) == len(grey) == 1
    assert grey[0][1][0] == pytest.approx(LEFT + scale * (1190 + 1420) / 2880)


def test_a_long_title_is_cut_short() -> None:
    step = op("a" * 200, 20)
    (drawing,) = timeline_drawings(planned(step, bench=BENCH)[0])
    assert overlaps(drawing) == []


def test_nothing_planned_nothing_drawn() -> None:
    made, _ = planned(op("sew"))
    assert timeline_drawings(made) == ()
    assert all("timeline" not in drawing.name for drawing in all_drawings(made))
