"""What the schema cannot see in prices: several currencies, and a price of nobody knows what."""

from __future__ import annotations

from collections.abc import Iterator

from foredge.contract import Book, Path, Problem, Quantity, StockItem, error
from foredge.contract.money import Price
from foredge.contract.stock import Flat


def money_problems(book: Book) -> list[Problem]:
    """What is wrong with the prices and the ``money`` of a book."""
    return [*_currencies(book), *_units(book), *_fees(book.money.fees)]


def prices_of(book: Book) -> tuple[Price, ...]:
    """Every price in the spec: ``money`` first, then the shelf in its order."""
    shelf = (price for item in book.stock.values() for price in _of_item(item))
    return (*book.money.prices(), *(price for price in shelf if price is not None))


def _of_item(item: StockItem) -> Iterator[Price | None]:
    """An item's own price, then those of its other sizes."""
    yield item.price
    if isinstance(item, Flat):
        yield from (size.price for size in item.more)


def currency_of(book: Book) -> str:
    """The currency of the spec; empty where nothing is priced."""
    return next((price.currency for price in prices_of(book)), "")


def _currencies(book: Book) -> Iterator[Problem]:
    """One error, however many prices differ: the first that does, and what it differs from."""
    prices = prices_of(book)
    for price in prices:
        if price.currency != prices[0].currency:
            yield error(
                price.path,
                f"{_dotted(price.path)} is in {price.currency} and {_dotted(prices[0].path)} in "
                f"{prices[0].currency}; a spec has one currency",
                "currencies-mixed",
                remedy="Write every price in the currency you pay and are paid in",
            )
            return


def _units(book: Book) -> Iterator[Problem]:
    for name, item in book.stock.items():
        if item.price is None or isinstance(item, Flat):
            continue
        if getattr(item, "sold_by", None) is None:
            yield error(
                item.price.path,
                f"it is not said how much of '{name}' {item.price.text} buys",
                "price-of-what",
                remedy="Add sold_by, such as sold_by: "
                + ("250 ml" if item.__struct_config__.tag == "supply" else "50 m"),
            )


def _fees(fees: Quantity | None) -> Iterator[Problem]:
    if fees is not None and fees.value >= 1:
        yield error(
            ("money", "fees"),
            "the fees take the whole price and more",
            "fees-too-large",
            remedy="Write the share that is kept back, such as 12 %",
        )


def _dotted(path: Path) -> str:
    return ".".join(str(step) for step in path)
