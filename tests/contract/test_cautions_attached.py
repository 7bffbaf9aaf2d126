"""What can hurt carries its caution: rows of the tables, and the tools of every operation."""

import re
from pathlib import Path

import pytest

from foredge.compile import compile_spec
from foredge.contract import Operation
from foredge.emit.cautions import caution
from foredge.registry import collect
from foredge.tables import Row, load_tables

CHECKOUT = Path(__file__).parents[2]
VALID = CHECKOUT / "tests" / "specs-valid"
SPECS = (
    *sorted((CHECKOUT / "specs").glob("*.yaml")),
    *(VALID / f"{name}.yaml" for name in ("edges", "edges-scorched", "finishes", "long-stitch")),
    *(VALID / f"closure-{name}.yaml" for name in ("button-loop", "clasp", "magnets")),
    *(VALID / f"{name}.yaml" for name in ("laminated-core", "patterns", "relief-parts")),
    *(VALID / f"{name}.yaml" for name in ("candle-scorched", "aged-pages-dry", "oven-bare-form")),
    *(VALID / f"{name}.yaml" for name in ("thrift-quarantined", "card-core-same-stuff")),
    *(VALID / f"{name}.yaml" for name in ("sanding-dust", "linseed-rags", "food-in-clay")),
    *(VALID / f"{name}.yaml" for name in ("fungicide-without-children", "skin-tissue-skin")),
    *(VALID / f"{name}.yaml" for name in ("hot-glue-structural", "inset-with-socket")),
    *(VALID / f"{name}.yaml" for name in ("boron-gels-glue", "acid-in-filler", "plastic-back")),
)
REGISTRY, _ = collect(entry_points=False)
TOOLS = (
    (r"(?<!palette )(?<!blunt )\bknife|chisel|guillotine", "blade"),
    (r"needle|\bawl", "awl-needle"),
    (r"\biron\b", "iron-heat"),
    (r"glue gun", "hot-glue"),
    (r"flame|torch", "flame"),
    (r"clamps|^press or", "press-pinch"),
    (r"blender", "hot-pulp"),
    (r"hammer|hole punch", "hammer"),
    (r"candle", "candle"),
    (r"\boven\b", "iron-heat"),
    (r"dust mask", "dust-talc"),
)
"""A tool by a pattern of its name, and the caution that its operation must carry."""


def rows(table: str) -> tuple[Row, ...]:
    return load_tables().rows(table)


@pytest.mark.parametrize("row", rows("adhesives"), ids=lambda row: row.name)
def test_adhesives(row: Row) -> None:
    """Without water it is hot, or holds solvent or resin; with flour it goes mouldy."""
    cautions = set(row.texts("cautions"))
    if row.get("water").number == 0:
        assert cautions & {"hot-glue", "spray-solvent", "resin-skin"}
    made_of = {row.name, *row.group("parts")}
    if made_of & {"flour", "paste", "paste-thick"}:
        assert "paste-mould" in cautions
    if made_of & {"pva", "wood-glue"}:
        assert "pva" in cautions


@pytest.mark.parametrize("row", rows("clays"), ids=lambda row: row.name)
def test_clays(row: Row) -> None:
    """Filler is dust, earthen clay too; pulp is boiled and beaten hot, and goes mouldy."""
    cautions, parts = set(row.texts("cautions")), set(row.group("parts"))
    if "joint-filler" in parts or row.name == "bought-earthen":
        assert "dust-talc" in cautions
    if "pulp" in parts:
        assert {"boiling-water", "hot-pulp", "paste-mould"} <= cautions
    if "vinegar" in parts:
        assert "bleach-acid" in cautions


@pytest.mark.parametrize("row", rows("paints"), ids=lambda row: row.name)
def test_paints(row: Row) -> None:
    """Everything thinned with a solvent; wax on rags heats up where it holds a drying oil."""
    if row.text("base") == "solvent":
        assert "spray-solvent" in row.texts("cautions")
    if row.name == "wax":
        assert "oily-rags" in row.texts("cautions")


def test_a_row_of_each_kind_is_looked_at() -> None:
    assert [row.name for row in rows("paints") if row.text("base") == "solvent"]
    assert [row.name for row in rows("adhesives") if row.get("water").number == 0]


@pytest.mark.parametrize("row", rows("cautions"), ids=lambda row: row.name)
def test_a_caution_is_whole(row: Row) -> None:
    """Signal word, hazard, precaution, source; no code both seen and from memory."""
    assert row.text("signal") and row.text("text") and row.text("precaution") and row.citation
    for key, form in (("signs", r"[WPMEF]\d{3}"), ("statements", r"(EUH|[HP])\d{3}\w*(\+P\d{3})*")):
        seen, unseen = row.texts(key), row.texts(f"{key}_from_memory")
        assert not set(seen) & set(unseen)
        assert all(re.fullmatch(form, code) for code in (*seen, *unseen)), row.name


@pytest.mark.parametrize("spec", SPECS, ids=lambda spec: spec.stem)
def test_a_sharp_or_hot_tool_brings_its_caution(spec: Path) -> None:
    build = compile_spec(str(spec), REGISTRY).build
    assert build is not None
    lacking = [lack for operation in build.order for lack in lacks(operation)]
    assert lacking == []


def lacks(operation: Operation) -> list[tuple[str, str, str]]:
    """Operation, tool and the caution that is not there."""
    return [
        (operation.id, tool, caution)
        for tool in operation.tools
        for pattern, caution in TOOLS
        if re.search(pattern, tool) and caution not in operation.cautions
    ]


def test_a_code_nobody_checked_says_so_on_the_sheet() -> None:
    build = compile_spec(str(VALID / "plain-journal.yaml"), REGISTRY).build
    assert build is not None
    assert caution(build, "blade").signs == "W022 (from memory)"
    spray = caution(build, "spray-solvent")
    assert spray.signs == "P003; W021, P002, M017 (from memory)"
    assert spray.statements == "H222, H229, P210, P211, P251, P410+P412; H336 (from memory)"


NEVER_MET: frozenset[str] = frozenset()
"""Cautions that no work meets: a caution nobody is shown would be a row for nothing."""


def test_every_caution_is_met_at_the_bench() -> None:
    """Some step of some spec carries it."""
    met = {name for spec in SPECS for one in built(spec) for name in one.cautions}
    assert {row.name for row in rows("cautions")} - met == NEVER_MET


def built(spec: Path) -> tuple[Operation, ...]:
    """The work of a spec."""
    build = compile_spec(str(spec), REGISTRY).build
    assert build is not None, spec.name
    return build.order
