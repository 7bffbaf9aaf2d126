"""Words and small questions that the modules of this stage share."""

from __future__ import annotations

from foredge.contract import LENGTH, Origin, Quantity, leaf

STAGE = "text-block"
SECTION = "text_block"

PRACTICE = "common practice"
CHOICE = "the maker's choice"
GEOMETRY = "geometry"


def op(verb: str) -> str:
    """Id of an operation of this stage."""
    return f"{STAGE}.{verb}"


def name(key: str) -> str:
    """Name of a quantity, piece or fact of this stage."""
    return f"{SECTION}.{key}"


def mm(q: Quantity) -> str:
    """A length for a problem's text: ``12.5 mm``."""
    return f"{plain(q)} mm"


def plain(q: Quantity) -> str:
    """A number for a problem's text, to a tenth."""
    return f"{q.value:.1f}".removesuffix(".0")


def counted(q: Quantity, word: str) -> str:
    """``word`` as it stands after the number ``q``: ``sheet`` after 1, else ``sheets``."""
    return word if q.value == 1 else f"{word}s"


def zero() -> Quantity:
    """No length at all, for what a book does without."""
    return leaf(0.0, LENGTH, "nothing", Origin("constant"))
