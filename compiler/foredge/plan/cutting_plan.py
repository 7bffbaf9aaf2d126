"""Pieces of every stage laid out on the sheets of the shelf."""

from __future__ import annotations

from foredge.contract import Build, Cutting, Problem


def plan_cutting(build: Build) -> tuple[Cutting, list[Problem]]:
    """The cutting plan of all copies."""
    return Cutting(), []
