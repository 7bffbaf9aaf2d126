"""Hold a spec's data against the envelope and the schemas of the plugins it chooses.

One validator does it all. Slots, stock items and unions are dispatched in Python on ``use``,
``kind`` and the type of what is written, so that a mistake gets one message, about the
branch that was meant.
"""

from __future__ import annotations

from typing import Any

from foredge.contract import Problem
from foredge.registry import Registry
from foredge.spec.schema_generate import Schema, envelope_schema, plugin_schema
from foredge.spec.schema_keywords import validator_for
from foredge.spec.schema_wording import worded
from foredge.tables import Tables

OPEN_SECTION = "object"


def check(data: Any, registry: Registry, tables: Tables) -> list[Problem]:
    """Everything in ``data`` that the schemas refuse, in the order of the spec."""
    validator = validator_for(data, spec_schema(registry), registry, tables)
    problems: list[Problem] = []
    for fault in validator.iter_errors(data):
        problems += worded(fault)
    return list(dict.fromkeys(problems))


def spec_schema(registry: Registry) -> Schema:
    """The envelope, with each stage's options in the place of its section."""
    envelope = envelope_schema()
    properties = dict(envelope["properties"])
    required = list(envelope["required"])
    for stage in registry.stages():
        known = properties.get(stage.section)
        if known is not None and (known.get("type") != OPEN_SECTION or "x-foredge-slot" in known):
            continue  # a list of parts: the stage reads those, and has no options of its own
        schema = plugin_schema(stage)
        properties[stage.section] = schema
        if schema.get("required") and stage.section not in required:
            required.append(stage.section)
    return {**envelope, "properties": properties, "required": required}
