"""What the compiler's own order and pieces already prevent, so that no rule need look for it.

Grain of every piece of the case along the spine; the wet paste-down cut narrower than it ends;
turn-ins, closures and edges before the paste-downs; nothing final before its gate; clay on a
board only when the layers under it are dry.
"""

from pathlib import Path

import pytest

from foredge.compile import compile_spec
from foredge.contract import BEFORE_PASTE_DOWNS, Build
from foredge.registry import collect

SPECS = sorted((Path(__file__).parents[2] / "specs").glob("*.yaml"))
REGISTRY, _ = collect(entry_points=False)


@pytest.fixture(scope="module", params=SPECS, ids=lambda spec: spec.stem)
def build(request: pytest.FixtureRequest) -> Build:
    made = compile_spec(str(request.param), REGISTRY).build
    assert made is not None
    return made


def places(build: Build) -> dict[str, int]:
    return {operation.id: at for at, operation in enumerate(build.order)}


def test_the_grain_of_what_holds_a_board_flat_runs_along_the_spine(build: Build) -> None:
    """Skin Deep vol. 10 (J. Hewit & Sons), on paper grain: boards, end-papers, linings."""
    flat = ("case.board", "text_block.end_paper", "text_block.lining", "sculpt.counter_lining")
    pieces = [piece for piece in build.whole.pieces if piece.name.startswith(flat)]
    assert pieces
    for piece in pieces:
        folded = piece.name.startswith("text_block.end_paper")
        assert piece.grain == "height" or (folded and piece.grain != "any"), piece.name


def test_a_paste_down_is_cut_narrower_than_it_will_be(build: Build) -> None:
    """Skin Deep vol. 10: wet paper grows across its grain."""
    cut = build.quantity("case.paste_down.width").value
    assert cut < build.quantity("text_block.paste_down.width").value


def test_turn_ins_closures_and_edges_come_before_the_paste_downs(build: Build) -> None:
    place = places(build)
    shut = min(place[name] for name in BEFORE_PASTE_DOWNS if name in place)
    covered = dict(build.whole.facts)["case.covered"]
    edges = [
        operation.id
        for operation in build.order
        if any(one.what == "block-edges" for one in operation.wettings)
    ]
    set_closure = [name for name in place if name == "finishing.set-closure"]
    for name in (covered, *edges, *set_closure):
        assert place[name] < shut, name


def test_nothing_final_is_cut_before_its_gate(build: Build) -> None:
    """What stops for a gate comes after the operation at whose end it is measured."""
    place = places(build)
    gates = {gate.id: gate for gate in build.whole.gates}
    stopped = [one for one in build.order if one.stops_for]
    assert stopped
    for operation in stopped:
        for name in operation.stops_for:
            assert place[gates[name].after] < place[operation.id], (operation.id, name)


def test_gatherings_are_pressed_before_they_are_sewn(build: Build) -> None:
    place = places(build)
    assert place["text-block.press-gatherings"] < place["text-block.sew"]


def test_boards_cure_before_they_are_covered(build: Build) -> None:
    """What glues their layers comes before what covers them, and its wait is not passed by."""
    place, facts = places(build), dict(build.whole.facts)
    glued = [one for one in build.order if one.id == "case.laminate-boards"]
    for operation in glued:
        assert operation.wait is not None and operation.wait.value > 0
        assert place[operation.id] < place[facts["case.boards_cut"]]
        assert place[facts["case.boards_cut"]] < place[facts["case.covered"]]


def test_the_book_is_closed_and_posted_last(build: Build) -> None:
    """After every coat and the closure; each with its wait."""
    place, facts = places(build), dict(build.whole.facts)
    close, post = place[facts["finishing.may_close"]], place[facts["finishing.may_post"]]
    coats = [
        place[one.id]
        for one in build.order
        if one.stage == "finishing" and any(w.what.startswith("board") for w in one.wettings)
    ]
    assert max(coats, default=0) <= close <= post


def test_coats_on_clay_come_after_the_test_that_it_is_dry(build: Build) -> None:
    place = places(build)
    dry = dict(build.whole.facts).get("sculpt.dry", "")
    coats = [
        operation.id
        for operation in build.order
        if operation.stage == "finishing"
        and any(one.what.startswith("board-") and one.water is None for one in operation.wettings)
    ]
    assert dry in place and coats
    assert all(place[dry] < place[name] for name in coats)
