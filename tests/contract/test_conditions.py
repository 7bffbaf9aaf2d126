"""What goes wrong at the bench, condition by condition, and what of the compiler looks for it.

The list is that of makers' complaints the rules were written from. A condition is looked for by
problems (each has specs that set it off and that nearly do: test_rules_covered.py), or the
compiler's own order and pieces keep it from arising (test_order_invariants.py), or both: then the
problem is for what ``done`` says was worked in another order.
"""

from pathlib import Path

import pytest

import foredge
from foredge.registry import collect
from foredge.reported import reported

ROOT = Path(foredge.__file__).parents[2]
KEPT = "kept by the order of work and the pieces"

CONDITIONS: dict[str, tuple[str, ...]] = {
    "grain of board, end-paper, lining or covering not along the spine": (
        KEPT, "grain-unknown", "piece-larger-than-stock", "no-folio-in-grain"),
    "grain of the text across the spine": ("grain-across-spine",),
    "handmade paper as a paste-down": ("paste-down-handmade",),
    "paste-down cut to its full size before it is wetted": (KEPT,),
    "more layers outside a board than inside": ("board-pull",),
    "a laminated board that is not symmetric": ("board-not-symmetric", "board-single-layer"),
    "cross-grained layers in an even count": ("board-cross-grain-even",),
    "coated card with wet glue on its bare side": ("board-coat-unpaired", "board-coat-outward"),
    "a laminated board covered before it has cured": (KEPT, "begun-before-dry"),
    "wet clay on an unsealed board or on one face": (
        "clay-on-unsealed-board", "one-sided-wetting"),
    "clay too thick to dry through": ("clay-too-thick",),
    "paint or varnish over clay that is not dry": (
        KEPT, "coat-over-damp-clay", "sealed-before-dry"),
    "clay between foil and a ground that takes no water": ("clay-dries-one-sided",),
    "filler with boron and white glue": ("boron-gels-glue",),
    "a powder filler that sets": ("setting-filler-large",),
    "acid with chalk or joint filler": ("acid-in-filler",),
    "salt against mould": ("salt-in-clay",),
    "fresh clay kept too long": ("sessions-too-far-apart",),
    "wallpaper paste with children": ("fungicide-with-children",),
    "an oven with tape, hot glue, magnets, plastic or a finished book": ("oven-harms",),
    "hot glue that holds the book": ("hot-glue-structural",),
    "paint over wax": ("coat-over-wax",),
    "water varnish over unfixed colour": ("coat-over-unfixed",),
    "metal in salt, acid or sour glue": ("metal-in-sour-clay",),
    "school or wood glue in a keepsake": ("glue-not-lasting",),
    "glossy faces that touch": ("faces-stick",),
    "closed or posted before it has cured": (KEPT, "closed-early"),
    "aged pages bound damp": (KEPT, "begun-before-dry"),
    "loose or unbacked cloth": ("cloth-unbacked", "cloth-unknown"),
    "a thick covering with the usual joint": ("covering-thick", "joint-narrow"),
    "a joint too narrow": ("joint-narrow",),
    "a rigid spine in a flat back": ("spine-rigid",),
    "a spine piece too wide or too narrow": ("spine-width",),
    "a plastic back with white glue": ("glue-plastic-back",),
    "stations near the trimmed edge": ("station-near-edge", "station-off-leaf"),
    "too much swell": ("swell-large",),
    "a hanging block with a large tail square": ("tail-square-unsupported",),
    "a heavy relief on a weak hinge": (
        "relief-hinge-weak", "super-narrow-under-relief", "cover-heavy-for-hinge"),
    "fresh plants or food": ("plant-in-wet-clay", "swelling-inclusions"),
    "a high relief, or a clasp across it": (
        "relief-high", "closure-over-relief", "clasp-short", "closure-on-relief"),
    "magnets chosen early, or without marked poles": ("magnet-weak", "magnet-poles-unmarked"),
    "a closure after the paste-downs": (KEPT, "closure-after-paste-down"),
    "edges coloured after casing in": (KEPT, "done-out-of-order"),
    "turn-ins after the paste-downs": (KEPT, "done-out-of-order"),
    "final pieces cut by an estimate": (KEPT, "cut-before-measured"),
    "a cold room, or frozen glue": ("room-cold", "glue-frozen"),
    "filler clay sanded dry": ("sanding-dust",),
    "rags with linseed oil": ("linseed-rags",),
    "glitter without a coat over it": ("coat-uncovered",),
    "musty or second-hand stuff": ("thrift-not-quarantined",),
    "two wet tasks in one evening": ("wet-work-crowded",),
    "more needed than there is": ("stock-short", "paper-short", "stock-too-small"),
    "a thin end-paper with wet paste": ("end-paper-thin-for-paste",),
    "a rigid inset ringed by wet clay": ("inset-without-socket",),
    "stiff card stacked on one face": ("card-core-pulls",),
    "a glue stick in a lasting book": ("glue-stick-lasting",),
}  # fmt: skip


@pytest.fixture(scope="module")
def names() -> set[str]:
    """Every rule, and every problem that the code reports."""
    registry, _ = collect(entry_points=False)
    files = [*ROOT.glob("compiler/foredge/**/*.py"), *ROOT.glob("plugins/**/*.py")]
    return {*registry.names("rule"), *(one.name for one in reported(files))}


def test_every_condition_is_looked_for_by_something_there_is(names: set[str]) -> None:
    found = {name for answers in CONDITIONS.values() for name in answers}
    assert all(CONDITIONS.values())
    assert found - names == {KEPT}


def test_every_rule_looks_for_one_of_them_or_for_more() -> None:
    """Rules beyond the list; each says in its own file what goes wrong."""
    registry, _ = collect(entry_points=False)
    listed = {name for answers in CONDITIONS.values() for name in answers}
    assert set(registry.names("rule")) - listed == {
        "closure-over-letters",
        "coat-hides-work",
        "coat-over-varnish",
        "coat-stiffens-joint",
        "elastic-bends-board",
        "paste-over-sealed-board",
        "relief-near-edge",
        "relief-off-panel",
        "relief-over-joint",
        "relief-unsealed",
    }
