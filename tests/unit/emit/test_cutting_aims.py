"""What the sheet and the data say of why these sheets are cut, and where the sizes cost less."""

from __future__ import annotations

import csv
import io
import json
from decimal import Decimal
from pathlib import Path
from typing import Any

from jsonschema import Draft202012Validator

from foredge.contract import Build
from foredge.data import schema_text
from foredge.emit.cutting_aims import aim_lines
from foredge.emit.html_page import BenchPage
from foredge.emit.markdown import BuildSheet
from foredge.emit.money import cost_view
from foredge.emit.quantities_json import Quantities
from foredge.emit.shopping import ledger_rows, shopping
from foredge.emit.shopping_csv import ShoppingList
from money_books import build_with, cost

SMALL: dict[str, Any] = {"width": "300 mm", "height": "420 mm", "price": "1.20 EUR", "sold_by": 5}
PRICED: dict[str, Any] = {"paper": {"count": 2, "price": "0.60 EUR", "more": [SMALL]}}


def sheet(build: Build) -> str:
    return BuildSheet().emit(build)["build-sheet.md"].decode()


def data(build: Build) -> dict[str, Any]:
    document: dict[str, Any] = json.loads(Quantities().emit(build)["quantities.json"])
    schema = json.loads(schema_text("quantities.schema.json"))
    assert list(Draft202012Validator(schema).iter_errors(document)) == []
    return document


def test_money_and_its_sum_stand_where_the_cutting_plan_is_read(tmp_path: Path) -> None:
    """24 folios, 2 from each small sheet at 0.24, 3 from each large one at 0.60."""
    build = build_with(tmp_path, PRICED)
    line = "paper, laid out for the least money: 12 × 1.20 EUR / 5 = 2.88 EUR."
    assert aim_lines(build) == (line,)
    assert line in sheet(build).partition("## Cutting plan")[2].partition("### paper")[0]
    page = BenchPage().emit(build)["build-sheet.html"].decode()
    assert line in page.partition('id="cutting"')[2]
    cut = data(build)["cutting"]["paper"]
    assert (cut["least"], cut["cost"], cut["currency"]) == ("money", "2.88", "EUR")
    assert cut["sheets"] == [{"width": 300, "height": 420, "used": 12, "buy": 0}]
    assert cut["area"] == 12 * 300 * 420


def test_a_book_without_prices_goes_by_area_and_says_so_only_of_several_sizes(
    tmp_path: Path,
) -> None:
    plain = build_with(tmp_path)
    assert aim_lines(plain) == ()
    cut = data(plain)["cutting"]
    assert {one["least"] for one in cut.values()} == {"area"}
    assert not any("cost" in one for one in cut.values())
    size = {"width": "300 mm", "height": "420 mm"}
    several = build_with(tmp_path, {"paper": {"more": [size]}}, display="imperial")
    assert aim_lines(several) == ("paper, laid out for the least area: 2344 sq in of sheets.",)


def test_one_sheet_is_its_own_sum(tmp_path: Path) -> None:
    build = build_with(tmp_path, {"end-sheets": {"price": "0.90 EUR"}})
    assert aim_lines(build) == ("end-sheets, laid out for the least money: 1 × 0.90 EUR.",)


def test_what_must_be_bought_names_the_size_and_says_it_is_the_cheapest(tmp_path: Path) -> None:
    build = build_with(tmp_path, PRICED)
    (row,) = [row for row in shopping(build).rows if row.what.startswith("paper")]
    assert row.what == "paper, 300 × 420 mm"
    assert (row.need, row.buy, row.price) == ("12 sheets", "3 × 5", "3.60 EUR")
    assert row.why == "to be bought; the cheapest of 2 sizes for these pieces"
    text = ShoppingList().emit(build)["shopping.csv"].decode()
    (found,) = [row for row in csv.DictReader(io.StringIO(text)) if row["stock"] == "paper"]
    assert found["material"] == "paper, 300 × 420 mm"
    assert (found["units_to_buy"], found["sold_by"], found["price"]) == ("3", "5", "1.20")
    assert (found["cost"], found["why"]) == ("3.60", row.why)


def test_each_size_costs_what_its_own_price_says(tmp_path: Path) -> None:
    few = {**SMALL, "count": 3, "price": "1.00 EUR"}
    build = build_with(tmp_path, {"paper": {"count": 9, "price": "0.60 EUR", "more": [few]}},
                       money={"asked": "40.00 EUR"})  # fmt: skip
    sums = {one.used.key: one for one in cost(build).materials}
    # 3 small sheets give 6 folios, 6 large ones the other 18.
    assert sums["used.paper.more-1"].used.amount == Decimal("0.60")
    assert sums["used.paper.more-1"].afresh.amount == Decimal("1.00")
    assert sums["used.paper"].used.amount == Decimal("3.60")
    materials = cost(build).sum("materials")
    assert materials is not None and materials.amount == Decimal("4.20")
    view = cost_view(build)
    assert view is not None
    assert [row.material for row in view.materials] == [
        "paper, 420 × 594 mm", "paper, 300 × 420 mm",
    ]  # fmt: skip
    assert view.materials[1].how == "3 at 1.00 EUR for 5"
    assert [row.need for row in ledger_rows(build) if row.material.startswith("paper")] == [
        "6 sheets", "3 sheets",
    ]  # fmt: skip
    document = data(build)["money"]
    assert [one["size"] for one in document["materials"]] == [0, 1]
    assert len({one["used"]["key"] for one in document["materials"]}) == 2


def test_a_size_without_a_price_is_named_among_what_is_not_counted(tmp_path: Path) -> None:
    bare = {"width": "300 mm", "height": "420 mm", "count": 3}
    build = build_with(tmp_path, {"paper": {"count": 9, "price": "0.60 EUR", "more": [bare]}})
    assert "paper, 300 × 420 mm" in cost(build).unpriced
    assert not any(one.startswith("paper, 420") for one in cost(build).unpriced)
    (line,) = aim_lines(build)
    assert line.startswith("paper, laid out for the least area: ")


def test_one_size_is_told_as_ever(tmp_path: Path) -> None:
    build = build_with(tmp_path, {"paper": {"price": "0.35 EUR"}})
    assert "size" not in data(build)["money"]["materials"][0]
    assert any(row.material == "paper" for row in ledger_rows(build))
