"""The build sheet of the small sample, whole; and what must hold on any sheet.

After a wanted change: ``PYTHONPATH=compiler:tests python -m unit.emit.test_markdown`` rewrites
the expected file; read the difference before you keep it.
"""

from dataclasses import replace
from pathlib import Path

import pytest

from foredge.emit import emit
from foredge.emit.gates import Box, measured_yaml
from foredge.emit.markdown import BuildSheet
from foredge.emit.stage_sheets import StageSheets
from foredge.emit.work import parts
from unit.emit.sample import sample

EXPECTED = Path(__file__).with_name("sample-build-sheet.md")


def sheet(**options: object) -> str:
    return BuildSheet().emit(sample(**options))["build-sheet.md"].decode()  # type: ignore[arg-type]


def test_the_whole_sheet() -> None:
    assert sheet(display="both") == EXPECTED.read_text(encoding="utf-8")


def test_a_hostile_title_stays_a_title() -> None:
    text = sheet(title='</script><b>"&\n# x | y `z`')
    assert text.splitlines()[0] == '# &lt;/script&gt;&lt;b&gt;"&amp; # x \\| y \\`z\\`'
    assert "<" not in text.replace("&lt;", "")


def test_words_of_a_step_are_plain_words() -> None:
    assert "2. Use the \\*dark\\* \\| red thread." in sheet()


def test_before_the_gates_nothing_that_rests_on_them_is_offered_for_cutting() -> None:
    text = sheet()
    assert "**STOP: measure first (gates G1 and G2).** board ____ mm; block height ____ mm" in text
    assert "| board | 2 | 146 × 215 mm | along the height | your choice | provisional" in text
    assert "Cut 2 boards, ≈ 146 mm wide." in text
    assert "blank: cut now, trim later to the width of the spine" in text


def test_after_the_gates_everything_is_firm_and_nothing_stops() -> None:
    text = sheet(measured={"board": 3.0, "block.height": 204.5, "block.spine": 20.0})
    assert "STOP: " not in text and "provisional (" not in text
    assert "≈" not in text.partition("## Measured")[2]
    assert "thickness at the spine | 20 mm, 8 mm above the estimate and outside its range" in text
    assert "block height 204.5 mm, 0.5 mm below the estimate" in text
    assert "measured:" not in text


def test_a_later_stop_does_not_ask_again() -> None:
    build = sample()
    order = tuple(replace(one, stops_for=("G1",)) for one in build.order)
    stops = [step.stop_boxes for view in parts(replace(build, order=order)) for step in view.steps]
    assert stops[0] and not any(stops[1:])


def test_a_gate_read_in_part_asks_only_for_the_rest() -> None:
    text = sheet(measured={"block.spine": 12.4})
    assert "measured:\n  block:\n    height: ____ mm\n```" in text
    assert "Still to be measured: G1 and G2." in text


def test_yaml_to_paste_is_nested() -> None:
    boxes = [Box(key, "x", "in", "", "", "") for key in ("board", "block.height", "block.spine")]
    assert measured_yaml(boxes) == (
        "measured:\n  board: ____ in\n  block:\n    height: ____ in\n    spine: ____ in"
    )


def test_a_caution_is_told_in_full_once_and_then_short() -> None:
    text = sheet().partition("## Cautions of this book")[0]
    assert text.count("A blade that slips cuts to the bone.") == 1
    assert text.count("Fresh blade, steel straight edge") == 3


def test_steps_are_numbered_through_the_order_of_work() -> None:
    views = parts(sample())
    assert [(view.number, view.title) for view in views] == [
        (1, "Case"),
        (2, "Text block"),
        (3, "Case, continued"),
    ]
    numbers = [step.number for view in views for step in view.steps]
    assert numbers == ["1.1", "2.1", "2.2", "2.3", "3.1"]


def test_what_is_done_is_marked() -> None:
    build = sample()
    build = replace(build, book=replace(build.book, done={"text-block.fold": "2026-12-01"}))
    text = BuildSheet().emit(build)["build-sheet.md"].decode()
    assert "then nothing to wait for; done 2026-12-01" in text


def test_a_stage_sheet_has_its_own_and_the_numbers_of_the_build_sheet() -> None:
    files = StageSheets().emit(sample())
    assert list(files) == ["stages/text-block.md", "stages/case.md"]
    case = files["stages/case.md"].decode()
    assert "# The Tide Table: Case" in case
    assert "Rests on: Text block." in case
    assert "### 1.1 Laminate the boards" in case and "### 3.1 Cut the boards" in case
    assert "Sew the gatherings" not in case and "text_block.thread" not in case
    assert "Awls and needles" not in case and "Knives and blades" in case


@pytest.mark.parametrize("display", ["metric", "imperial", "both"])
def test_same_build_same_bytes_and_clean_text(display: str) -> None:
    files = emit(sample(display=display))
    assert files == emit(sample(display=display))
    for path, content in files.items():
        if path.endswith(".pdf"):
            assert content.startswith(b"%PDF-") and content.rstrip().endswith(b"%%EOF")
            continue
        text = content.decode()
        assert "\r" not in text and text.endswith("\n") and not text.endswith("\n\n"), path
        if path.endswith(".md"):
            assert "\n\n\n" not in text, path
            assert all(line == line.rstrip() for line in text.splitlines()), path


def test_imperial_sheets_have_no_millimetres() -> None:
    text = sheet(display="imperial")
    assert " mm" not in text.replace("such as 12 mm (10 to 14)", "")
    assert "5 3/4 × 8 15/32 in" in text


if __name__ == "__main__":
    EXPECTED.write_text(sheet(display="both"), encoding="utf-8", newline="\n")
