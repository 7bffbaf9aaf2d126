"""``quantities.json``: every quantity of the book, for programs.

The form is ``schemas/quantities.schema.json``. Keys are sorted, values have fixed units and
six significant figures.
"""

from __future__ import annotations

import json
from typing import Any

from foredge.contract import Build
from foredge.emit.cutting_aims import cutting_part
from foredge.emit.escape import one_line
from foredge.emit.money_json import money_part
from foredge.emit.plain_units import plain_number, plain_unit
from foredge.emit.schedule_json import schedule
from foredge.formula import formula
from foredge.quantity import Quantity
from foredge.whence import whence


class Quantities:
    """``quantities.json``."""

    kind = "emitter"
    name = "quantities"
    title = "Quantities in JSON"

    def emit(self, build: Build) -> dict[str, bytes]:
        """All named quantities by name."""
        document = {
            "format": 1,
            "schedule": schedule(build),
            "spec": build.shown(build.file),
            "title": one_line(build.book.title),
            "quantities": {
                quantity.name: entry(build, quantity)
                for quantity in (*build.whole.quantities, *build.plan.ledger.quantities)
            },
            **cutting_part(build),
            **money_part(build),
        }
        text = json.dumps(document, ensure_ascii=False, indent=2, sort_keys=True)
        return {"quantities.json": (text + "\n").encode()}


def entry(build: Build, quantity: Quantity) -> dict[str, Any]:
    """One quantity as plain data."""
    band = build.band(quantity)
    made = formula(quantity)
    return {
        "firm": quantity.firm,
        "formula": made.text or whence(build, quantity),
        "gates": sorted(quantity.gates),
        "high": plain_number(band.high, quantity.dimension),
        "inputs": sorted({node.name for node in (*made.inputs, *made.deciders) if node.name}),
        "label": quantity.label,
        "low": plain_number(band.low, quantity.dimension),
        "rule": quantity.rule,
        "source": quantity.source or (quantity.origin.citation if quantity.origin else ""),
        "steps": {step.mark: step.text for step in made.steps},
        "unit": plain_unit(quantity.dimension).name,
        "value": plain_number(quantity.value, quantity.dimension),
    }
