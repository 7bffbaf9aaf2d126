"""The shopping list and the money of the sheet."""

import csv
import io
import json
from decimal import Decimal
from pathlib import Path

from jsonschema import Draft202012Validator

from demo import Run, compiled
from foredge.contract import Build
from foredge.data import schema_text
from foredge.emit.markdown import BuildSheet
from foredge.emit.money import cost_view
from foredge.emit.quantities_json import Quantities
from foredge.emit.shopping import ledger_rows, shopping
from foredge.emit.shopping_csv import ShoppingList
from money_books import build_with

SALTMARSH = Run("saltmarsh-tide-book.yaml")


def rows(build: Build) -> list[dict[str, str]]:
    text = ShoppingList().emit(build)["shopping.csv"].decode()
    assert "\r" not in text
    return list(csv.DictReader(io.StringIO(text)))


def test_what_must_be_bought_stands_first_with_its_cost(tmp_path: Path) -> None:
    stock = {"thread": {"length": "1 m", "price": "3.20 EUR", "sold_by": "10 m"}}
    build = build_with(tmp_path, stock, copies=2)
    found = {row["material"]: row for row in rows(build)}
    thread = found["thread"]
    assert (thread["units_to_buy"], thread["sold_by"], thread["sold_by_unit"]) == (
        "1", "10000", "mm",
    )  # fmt: skip
    assert (thread["price"], thread["cost"], thread["currency"]) == ("3.20", "3.20", "EUR")
    assert thread["why"] == "short on the shelf"
    assert float(thread["need"]) > 2 * float(thread["one_book"]) > 0
    order = [bool(row["why"] in ("on the shelf",)) for row in rows(build)]
    assert order.index(True) > order.index(False)


def test_a_class_list_names_what_nobody_listed() -> None:
    found = {row["material"]: row for row in rows(compiled(SALTMARSH))}
    assert found["Wheat flour"]["why"] == "not listed on the shelf"
    assert any(name.startswith("any stiff card") for name in found)
    assert not any(name.startswith("the laminated board") for name in found)


def test_no_cell_is_a_formula(tmp_path: Path) -> None:
    jar = {"kind": "supply", "material": "=cmd|'/c calc'!A1"}
    finish = [{"use": "wax", "on": ["front"], "stock": "jar"}]
    build = build_with(tmp_path, {"jar": jar}, finishing=finish)
    cells = [cell for row in rows(build) for cell in row.values()]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@"))]


def test_the_ledger_tells_the_shelf_and_what_is_missing(tmp_path: Path) -> None:
    build = build_with(tmp_path, {"thread": {"length": "1 m"}})
    thread = next(row for row in ledger_rows(build) if row.material == "thread")
    assert thread.shelf == "1000 mm" and thread.missing == "1170 mm"
    glue = next(row for row in ledger_rows(build) if row.material.startswith("White glue"))
    assert (glue.shelf, glue.missing) == ("not listed", "")
    assert thread.steps in BuildSheet().emit(build)["build-sheet.md"].decode()


def test_the_sums_of_the_sheet_add_up() -> None:
    build = compiled(SALTMARSH)
    view, cost = cost_view(build), build.plan.cost
    assert view is not None and cost is not None
    used = sum((one.used.amount for one in cost.materials), Decimal(0))
    materials = cost.sum("materials")
    assert materials is not None and materials.amount == used
    assert [row.all for row in view.sums if row.label.startswith("materials")] == [f"{used} EUR"]
    assert shopping(build).total.endswith("EUR")


def test_the_sheet_of_several_copies_says_so(tmp_path: Path) -> None:
    stock = {"thread": {"price": "3.20 EUR", "sold_by": "10 m"}}
    text = BuildSheet().emit(build_with(tmp_path, stock, copies=3))["build-sheet.md"].decode()
    assert "Amounts here are those of all 3 copies" in text
    assert "all 3 copies | each" in text
    assert "Done once for all copies: steps " in text


def test_json_keeps_to_its_schema_and_its_money_is_text(tmp_path: Path) -> None:
    build = compiled(SALTMARSH)
    document = json.loads(Quantities().emit(build)["quantities.json"])
    schema = json.loads(schema_text("quantities.schema.json"))
    assert list(Draft202012Validator(schema).iter_errors(document)) == []
    assert all(isinstance(one["amount"], str) for one in document["money"]["sums"])
    assert "stock.white-glue.need" in document["quantities"]
    plain = json.loads(Quantities().emit(build_with(tmp_path))["quantities.json"])
    assert "money" not in plain
