"""Which item of the shelf a step means by a name."""

from pathlib import Path

import pytest

from foredge.plan.shelf.names import called, fold, stock_for
from foredge.tables import load_tables
from money_books import build_with

GREEN, BONE = "Acrylic paint, deep sea green", "Acrylic paint, bone"


@pytest.fixture(scope="module")
def home(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("names")


@pytest.mark.parametrize(
    ("item", "material", "meant"),
    [
        ({"material": "White glue (PVA)"}, "White glue (PVA)", True),
        ({"material": "white glue"}, "White glue (PVA)", True),
        ({"material": "pva"}, "White glue (PVA)", True),
        ({"material": "wood-glue"}, "White glue (PVA)", False),
        ({"material": "Acrylic paint", "colour": "bone"}, BONE, True),
        ({"material": "acrylic paint", "colour": "bone"}, GREEN, False),
        ({"material": "acrylic paint"}, GREEN, True),
        ({"material": BONE}, BONE, True),
        ({"material": BONE}, GREEN, False),
        ({"material": "kitchen foil"}, "Kitchen foil", True),
        ({"material": "foil"}, "Kitchen foil", True),
        ({"material": "gold"}, "Gold leaf, loose or transfer, 80 mm", True),
    ],
)
def test_by_material(home: Path, item: dict[str, str], material: str, meant: bool) -> None:
    build = build_with(home, {"jar": {"kind": "supply", **item}})
    assert stock_for(build, material) == ("jar" if meant else None)


def test_by_the_name_of_the_item(home: Path) -> None:
    build = build_with(home, {"white-glue": {"kind": "supply"}})
    assert stock_for(build, "White glue (PVA)") == "white-glue"


def test_the_closest_is_taken(home: Path) -> None:
    jars = {"paint": {"material": "acrylic paint"}, "bone": {"material": BONE}}
    build = build_with(home, {name: {"kind": "supply", **item} for name, item in jars.items()})
    assert (stock_for(build, BONE), stock_for(build, GREEN)) == ("bone", "paint")


def test_titles_with_commas_keep_them() -> None:
    known = called(load_tables(), "PVA and water, 1 to 1, oxblood")
    assert known.colour == "oxblood"
    assert fold("seal-pva") in known.names
