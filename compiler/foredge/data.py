"""Find ``schemas/`` and ``shared/``: inside the wheel, else in the checkout."""

from importlib.resources import files
from importlib.resources.abc import Traversable
from pathlib import Path

_CHECKOUT = Path(__file__).resolve().parents[2]


def _root() -> Traversable:
    packaged = files("foredge") / "_data"
    return packaged if packaged.is_dir() else _CHECKOUT


def schema_text(name: str) -> str:
    """Text of ``schemas/<name>``."""
    return (_root() / "schemas" / name).read_text(encoding="utf-8")


def table_text(name: str) -> str:
    """Text of ``shared/<name>``."""
    return (_root() / "shared" / name).read_text(encoding="utf-8")
