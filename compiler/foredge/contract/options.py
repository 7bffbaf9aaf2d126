"""The bases of every options class."""

from __future__ import annotations

from typing import Annotated

import msgspec
from msgspec import Meta


class Options(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """Options of a stage: the mapping under its own top-level key of the spec."""

    note: (
        Annotated[str, Meta(description="A remark of the maker's; printed in the sheet.")] | None
    ) = None


class PartOptions(Options, frozen=True, forbid_unknown_fields=True, kw_only=True, tag_field="use"):
    """Options of a part; give the subclass ``tag="..."``, the name after ``use``."""
