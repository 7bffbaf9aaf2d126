"""Rows and values of the reference tables, for the tests against published figures."""

from __future__ import annotations

from foredge.tables import Row, Value, load_tables

IN = 25.4
LB = 453.59237


def row_of(table: str, name: str) -> Row:
    return load_tables().row(table, name)


def value_of(table: str, name: str, key: str) -> Value:
    return row_of(table, name).get(key)


def within(value: Value, first: float, last: float) -> bool:
    """Does the value's range reach the published one?"""
    low = value.low if value.low is not None else value.least
    high = value.high if value.high is not None else value.most
    return (low if low is not None else value.number) <= last and first <= (
        high if high is not None else value.number
    )
