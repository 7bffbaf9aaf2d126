"""``foredge check`` from a cold start, beside the floor of a bare script.

The aim is at most 1.5 times the floor; it is measured here and not asserted.
"""

import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[2]
SPEC = CHECKOUT / "specs" / "saltmarsh-tide-book.yaml"
SCHEMA = CHECKOUT / "schemas" / "book.schema.json"
ENVIRONMENT = {"PYTHONPATH": f"{CHECKOUT / 'compiler'}:{CHECKOUT / 'plugins'}", "PATH": ""}


def command(*arguments: object) -> None:
    subprocess.run([sys.executable, *map(str, arguments)], env=ENVIRONMENT, check=True)


@pytest.mark.benchmark(group="cold start")
def test_check(benchmark) -> None:
    benchmark.pedantic(command, args=("-m", "foredge", "check", SPEC), rounds=7, warmup_rounds=1)


@pytest.mark.benchmark(group="cold start")
def test_floor(benchmark) -> None:
    floor = Path(__file__).with_name("floor.py")
    benchmark.pedantic(command, args=(floor, SPEC, SCHEMA), rounds=7, warmup_rounds=1)
