"""How the page's numbers were made, as data its script shows when a number is tapped.

It is read from the recorded computation, as ``foredge explain`` reads it. The form is short,
because it is most of the page: one entry a quantity, its keys single letters (see
:func:`_entry`), a text that depends on the units a list of three, empty things left out.
"""

from __future__ import annotations

import json
from typing import Any

from markupsafe import Markup

from foredge.contract import Band, Build, Quantity
from foredge.display import show
from foredge.emit.html.numbers import Numbers
from foredge.emit.html.told import SYSTEMS, harmless
from foredge.emit.words import state_within
from foredge.estimates import estimate_text, off_by
from foredge.formula import Formula, formula, label_of
from foredge.quantity import Program
from foredge.whence import whence

MOST_CAUSES = 4
"""So many causes of a range are told; the rest is small."""

Told = str | list[str]


def derivations(build: Build, numbers: Numbers) -> Markup:
    """The entries of all ``numbers`` and of what lies behind them, as JSON for the page."""
    program = Program(list(numbers))
    bands = dict(zip(map(id, program.nodes), program.bands(program.nodes), strict=True))
    entries: list[dict[str, Any]] = []
    while len(entries) < len(known := list(numbers)):
        for quantity in known[len(entries) :]:
            entries.append(_entry(build, numbers, quantity, bands[id(quantity)]))
    text = json.dumps(entries, ensure_ascii=False, sort_keys=True, separators=(",", ":"))
    # Only these could end the element, or a line of the script, before its time.
    for char in "<>&\u2028\u2029":
        text = text.replace(char, f"\\u{ord(char):04x}")
    return Markup(text)


def _entry(build: Build, numbers: Numbers, quantity: Quantity, band: Band) -> dict[str, Any]:
    """One quantity.

    ``l`` label, ``n`` name, ``v`` value with its range, ``s`` state, ``f`` formula, ``t`` its
    steps told apart, a line each, ``i`` inputs and ``d`` deciders (what the formula calls it,
    its place), ``r`` the rule's reason, ``c`` its source, ``w`` where it comes from, ``g`` what
    its gate says, ``b`` what the range comes from (label, share in per cent).
    """
    made = [formula(quantity, system) for system in SYSTEMS]
    causes = [
        [harmless(label_of(leaf)), _percent(share)] for leaf, share in band.shares[:MOST_CAUSES]
    ]
    entry = {
        "l": harmless(numbers.label(quantity)),
        "n": quantity.name or "",
        "v": _told([show(quantity, system, band) for system in SYSTEMS]),
        "s": state_within(quantity, band),
        "f": _told([one.text for one in made]),
        "t": _told([_steps(one) for one in made]),
        "i": [[made[0].terms[id(node)], numbers.place(node)] for node in made[0].inputs],
        "d": [[made[0].terms[id(node)], numbers.place(node)] for node in made[0].deciders],
        "r": harmless(quantity.rule),
        "c": harmless(quantity.source),
        "w": harmless(whence(build, quantity)) if quantity.op == "leaf" else "",
        "g": _told([_gate(quantity, system) for system in SYSTEMS]),
        "b": causes if len(causes) > 1 or made[0].text else [],
    }
    return {key: value for key, value in entry.items() if value}


def _told(texts: list[str]) -> Told:
    kept = ["\n".join(map(harmless, text.split("\n"))) for text in texts]
    return kept if len(set(kept)) > 1 else kept[0]


def _steps(made: Formula) -> str:
    return "\n".join(f"{step.mark} = {step.text}" for step in made.steps)


def _percent(share: float) -> str:
    return "under 1 %" if share < 0.005 else f"{100 * share:.0f} %"


def _gate(quantity: Quantity, system: str) -> str:
    if quantity.op != "gate":
        return ""
    gate = quantity.data
    if not gate.read:
        return f"{gate.gate}: measure the {gate.label}; until then this is an estimate"
    return f"{gate.gate}: measured, {off_by(quantity, system)} {estimate_text(quantity, system)}"
