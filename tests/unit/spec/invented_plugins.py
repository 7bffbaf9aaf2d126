"""Small plugins with every sort of option there is, for the tests of schema and conversion."""

from __future__ import annotations

from typing import Annotated, Literal

import msgspec
from msgspec import Meta

from foredge.contract import (
    Angle,
    Count,
    CountOrZero,
    Covering,
    Duration,
    Grammage,
    Length,
    LengthOrZero,
    Options,
    Part,
    PartOptions,
    Ratio,
    StageResult,
    Temperature,
    ThreadSize,
    slot,
    stock_name,
    table_row,
)
from foredge.testing import registry_of


class Layer(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """One layer."""

    card: Annotated[str, stock_name("board", "sheet"), Meta(description="Which card.")]
    count: Annotated[Count, Meta(description="How many.")] | None = None


class Trim(msgspec.Struct, frozen=True, forbid_unknown_fields=True, kw_only=True):
    """What is cut off."""

    head: Annotated[Length, Meta(description="At the head.")]


class Mitred(
    msgspec.Struct,
    frozen=True,
    forbid_unknown_fields=True,
    kw_only=True,
    tag="mitred",
    tag_field="use",
):
    """Corners cut at an angle."""

    angle: Annotated[Angle, Meta(description="The angle.")] | None = None


class Folded(
    msgspec.Struct,
    frozen=True,
    forbid_unknown_fields=True,
    kw_only=True,
    tag="folded",
    tag_field="use",
):
    """Corners folded in."""

    tuck: Annotated[LengthOrZero, Meta(description="What is tucked in.")]


class WrapOptions(PartOptions, tag="wrap", frozen=True, kw_only=True):
    """A covering in one piece."""

    material: Annotated[str, stock_name("cloth"), Meta(description="Which cloth.")] | None = None
    turn_in: Annotated[Length, Meta(description="Over the edges.")] | None = None
    layers: Annotated[tuple[Layer, ...], Meta(description="What lies under it.")] = ()
    trim: Annotated[Literal["none"] | Trim, Meta(description="What is cut off.")] | None = None
    corners: Annotated[Mitred | Folded, Meta(description="The corners.")] | None = None
    glue: Annotated[str, table_row("adhesives"), Meta(description="Which glue.")] | None = None
    coats: Annotated[CountOrZero, Meta(description="How many.")] | None = None
    strength: Annotated[float, Meta(ge=0, lt=1, description="A number.")] = 0.5
    rows: Annotated[int, Meta(ge=1, description="A plain whole number.")] = 1
    inner: Annotated[Part[Covering], slot("covering"), Meta(description="Below.")] | None = None
    places: Annotated[dict[str, Length], Meta(description="Lengths by name.")] = {}  # noqa: RUF012
    damp: Annotated[bool, Meta(description="Whether it is damped first.")] = False


class Wrap:
    """A covering with options of every sort."""

    kind, name, title, options = "covering", "wrap", "One piece", WrapOptions

    def in_joint(self, book: object, part: object) -> None: ...

    def cover(self, job: object) -> None: ...


class HalfOptions(PartOptions, tag="half", frozen=True, kw_only=True):
    """A covering in two pieces."""

    spine: Annotated[str, stock_name("cloth"), Meta(description="Which cloth.")]


class Half(Wrap):
    """A covering that cannot be a default."""

    name, title, options = "half", "Two pieces", HalfOptions  # type: ignore[assignment]


class CaseOptions(Options, frozen=True, kw_only=True):
    """A case."""

    square: Annotated[Length, Meta(description="The square.")]
    grammage: Annotated[Grammage, Meta(description="Of the paper.")] | None = None
    wait: Annotated[Duration, Meta(description="How long.")] | None = None
    room: Annotated[Temperature, Meta(description="How warm.")] | None = None
    share: Annotated[Ratio, Meta(description="How much of it.")] | None = None
    thread: Annotated[ThreadSize, Meta(description="How thick.")] | None = None
    covering: Annotated[Part[Covering], slot("covering"), Meta(description="It.")] | None = None
    more: Annotated[
        tuple[Annotated[Part[Covering], slot("covering")], ...], Meta(description="Others.")
    ] = ()


class Case:
    """A stage that does nothing."""

    kind, name, title, options = "stage", "case", "Case", CaseOptions
    section = prefix = "case"
    needs: tuple[str, ...] = ()

    def run(self, book: object, upstream: object) -> StageResult:
        return StageResult()


REGISTRY = registry_of(Wrap(), Half(), Case(), builtins=False)

SPEC = """\
foredge: 1
title: The Prompt Book
stock:
  card: {kind: board, width: 10 in, height: 300 mm, material: greyboard, coated: one side}
  sail: {kind: cloth, width: 1 m, height: 50 cm, material: canvas}
  paper: {kind: sheet, width: 440 mm, height: 600 mm, creases: [{along: width, at: 30 cm}]}
  thread: {kind: thread, size: 25/3}
text_block: {}
case:
  square: 1/8 in
  grammage: 70 lb text
  wait: 24 h
  room: 18 degC
  share: 15 %
  thread: 200 tex
  covering:
    use: wrap
    material: sail
    layers: [{card: card, count: 2}, {card: paper}]
    trim: {head: 3 mm}
    corners: {use: folded, tuck: 0 mm}
    glue: pva
    coats: 0
    places: {head: 1 mm}
    inner: {use: half, spine: sail}
  more: [{use: half, spine: sail}, {use: wrap, trim: none, corners: {use: mitred}}]
bench:
  start: 2026-12-01
  sessions: [Mon and Thu 19:00-21:00]
  room: {temperature: 18 degC, humidity: 55 %}
measured: {board: 3.1 mm, joint_cloth: 0.6 mm, block: {height: 8 in, fore_edge: 12 mm}}
done: [case.cut, {operation: case.cover, at: 2026-12-01 20:30}]
accept: [{rule: grain-across-spine, because: it is a prop, at: case.covering}]
"""
