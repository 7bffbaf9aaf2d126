"""Whether an object is a plugin: what it must have, and whether its options make sense."""

from __future__ import annotations

import re
from typing import Any

import msgspec

from foredge.contract import Options, PartOptions

NAME = re.compile(r"[a-z][a-z0-9-]*")
KEY = re.compile(r"[a-z][a-z0-9_]*")

JOBS: dict[str, tuple[str, ...]] = {
    "stage": ("run",),
    "sewing": ("sew",),
    "end-papers": ("make",),
    "edge": ("treat",),
    "boards": ("thickness", "make"),
    "spine": ("plan",),
    "covering": ("in_joint", "cover"),
    "casing-in": ("join",),
    "relief-part": ("shape",),
    "skin": ("figures", "mix"),
    "finish": ("describe", "apply"),
    "closure": ("fasten",),
    "rule": ("test",),
    "emitter": ("emit",),
}
"""The methods a plugin of a kind of ours must have. Other kinds are the plugins' own."""

KINDS = frozenset((*JOBS, "embellishment"))
"""The kinds that the spec's envelope or our own stages ask for."""

RESERVED = (
    *("foredge", "title", "copies", "display", "print", "note", "stock", "bench", "money"),
    "closure",
    *("measured", "done", "accept", "extends", "variants"),
)
"""Top-level keys of a spec that no stage can have for its own."""


def faults_of(plugin: Any, *, thorough: bool) -> list[str]:
    """What is wrong with ``plugin``; nothing where it can be taken.

    ``thorough`` generates its schema too and looks at every keyword. For the built-ins a
    test does that, so that no start pays for it.
    """
    faults = _words(plugin)
    if faults:
        return faults
    faults = [
        f"it has no method '{method}', which the kind '{plugin.kind}' asks for"
        for method in JOBS.get(plugin.kind, ())
        if not callable(getattr(plugin, method, None))
    ]
    if plugin.kind == "stage":
        faults += _stage(plugin)
    elif plugin.kind not in ("rule", "emitter"):
        faults += _options(plugin)
    if thorough and not faults and getattr(plugin, "options", None) is not None:
        from foredge.spec.schema_sound import unsound

        faults += unsound(plugin)
    return faults


def _words(plugin: Any) -> list[str]:
    faults = []
    for word in ("kind", "name", "title"):
        said = getattr(plugin, word, None)
        if not isinstance(said, str) or not said.strip():
            faults.append(f"it has no '{word}'")
        elif word != "title" and not NAME.fullmatch(said):
            faults.append(
                f"its {word} '{said}' is not made of small letters, digits and hyphens, "
                "starting with a letter"
            )
    return faults


def _stage(stage: Any) -> list[str]:
    faults = []
    for word in ("section", "prefix"):
        said = getattr(stage, word, None)
        if not isinstance(said, str) or not KEY.fullmatch(said):
            faults.append(f"its {word} {said!r} is no word such as 'text_block'")
    if getattr(stage, "section", None) in RESERVED:
        faults.append(f"its section '{stage.section}' is a key of the spec itself")
    needs = getattr(stage, "needs", None)
    if not isinstance(needs, tuple) or not all(isinstance(need, str) for need in needs):
        faults.append("its 'needs' is no tuple of stage names")
    if not _is_struct(getattr(stage, "options", None), Options):
        faults.append("its 'options' is no subclass of Options")
    return faults


def _options(plugin: Any) -> list[str]:
    options: Any = getattr(plugin, "options", None)
    if not _is_struct(options, PartOptions):
        return ["its 'options' is no subclass of PartOptions"]
    config = options.__struct_config__
    if config.tag != plugin.name or config.tag_field != "use":
        return [f"its options have the tag {config.tag!r}; it must be its name, '{plugin.name}'"]
    return []


def _is_struct(options: Any, base: type[msgspec.Struct]) -> bool:
    return isinstance(options, type) and issubclass(options, base)
