"""What a spec says becomes typed objects whose numbers know their place."""

from __future__ import annotations

import pytest

from foredge.contract import GRAMMAGE, LENGTH, LINEAR_DENSITY, RATIO, TIME, Origin, Sheet
from foredge.spec.convert import Converter, convert, default_part, quantity
from foredge.spec.schema_generate import struct_schema
from foredge.testing import book_from
from unit.spec.invented_plugins import (
    REGISTRY,
    SPEC,
    CaseOptions,
    Folded,
    Half,
    Layer,
    Mitred,
    Trim,
    Wrap,
    WrapOptions,
)


def case() -> CaseOptions:
    options = book_from(SPEC, registry=REGISTRY).sections["case"]
    assert isinstance(options, CaseOptions)
    return options


def test_measures_are_canonical_and_know_their_place() -> None:
    square = case().square
    assert square.value == 25.4 / 8
    assert (square.dimension, square.name, square.label) == (LENGTH, "case.square", "square")
    assert square.origin == Origin("spec", ("case", "square"), "1/8 in")
    assert (square.low, square.high, square.firm) == (square.value, square.value, True)


def test_every_dimension() -> None:
    options = case()
    assert options.wait is not None and options.grammage is not None
    assert options.room is not None and options.share is not None and options.thread is not None
    assert (options.wait.value, options.wait.dimension) == (86400, TIME)
    # 70 lb text is 500 sheets of 25 x 38 in: 70 * 453.59237 g / (500 * 0.61290 m2), by hand.
    assert options.grammage.value == pytest.approx(103.6e-6, rel=1e-3)
    assert options.grammage.dimension == GRAMMAGE
    assert (options.room.value, options.share.value) == (18, 0.15)
    assert (options.thread.value, options.thread.dimension) == (200e-6, LINEAR_DENSITY)


def test_parts_carry_plugin_options_and_path() -> None:
    covering = case().covering
    assert covering is not None
    assert isinstance(covering.plugin, Wrap)
    assert covering.path == ("case", "covering")
    options = covering.options
    assert isinstance(options, WrapOptions)
    assert options.material == "sail"
    inner = options.inner
    assert inner is not None
    assert isinstance(inner.plugin, Half)
    assert (inner.path, inner.options.spine) == (("case", "covering", "inner"), "sail")


def test_lists_unions_and_mappings() -> None:
    options = case().covering.options  # type: ignore[union-attr]
    assert [type(layer) for layer in options.layers] == [Layer, Layer]
    count = options.layers[0].count
    assert (count.value, count.integer, count.dimension) == (2, True, RATIO)
    assert (count.name, count.label) == ("case.covering.layers.0.count", "count")
    assert options.layers[1].count is None
    assert isinstance(options.trim, Trim)
    assert isinstance(options.corners, Folded)
    assert options.corners.tuck.value == 0
    assert options.coats.value == 0
    assert options.places["head"].name == "case.covering.places.head"
    first, second = case().more
    assert isinstance(first.plugin, Half)
    assert second.options.trim == "none"
    assert isinstance(second.options.corners, Mitred)
    assert (second.options.strength, second.options.rows, second.options.damp) == (0.5, 1, False)


def test_whole_numbers_written_as_decimals() -> None:
    text = SPEC.replace("count: 2}", "count: 2.0}").replace("coats: 0", "coats: 0\n    rows: 3.0")
    options = book_from(text, registry=REGISTRY).sections["case"].covering.options
    assert options.layers[0].count.value == 2
    assert options.rows == 3
    assert isinstance(options.rows, int)


def test_the_shelf_is_typed() -> None:
    paper = book_from(SPEC, registry=REGISTRY).stock["paper"]
    assert isinstance(paper, Sheet)
    assert paper.width.name == "stock.paper.width"
    assert paper.creases[0].at.value == 300
    assert (paper.grain, paper.count) == ("unknown", None)


def test_any_struct_can_be_converted() -> None:
    made = convert({"head": "3 mm"}, Trim, ("x",), REGISTRY, struct_schema(Trim))
    assert made.head.name == "x.head"


def test_what_a_schema_would_refuse_raises() -> None:
    with pytest.raises(ValueError, match=r"a\.b: say the unit"):
        quantity("3", {"x-foredge-measure": "length"}, ("a", "b"))
    with pytest.raises(KeyError):
        Converter(REGISTRY).part("covering", {"use": "none-such"}, ())


def test_default_parts() -> None:
    choose = default_part(REGISTRY)
    part = choose("covering", "wrap", ("case", "covering"))
    assert isinstance(part.plugin, Wrap)
    assert part.options == WrapOptions()
    assert part.path == ("case", "covering")
    with pytest.raises(LookupError, match="cannot be a default: it must be told spine"):
        choose("covering", "half", ())
    with pytest.raises(LookupError, match="no covering is called 'x', to be the default"):
        choose("covering", "x", ())
