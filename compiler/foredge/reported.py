"""Which problems the code itself can report, read from the code: a list kept by hand would drift.

A rule plugin says its own name. What a stage, a part or the reader of the spec reports has its
name where it is made, ``warning(path, text, "joint-narrow", ...)``, or is handed to a function
that makes it. Both are found in the syntax tree; nothing is run.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, field
from pathlib import Path

_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)+")
_ORDER = ("error", "warning", "note")
_ANY: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class Reported:
    """A problem by name: the severities it may have (empty: not said where it is made), and
    the sources that stand beside it, as far as they are plain text."""

    name: str
    severities: tuple[str, ...]
    sources: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class _Reporter:
    """A function that makes a problem: which argument is its name, and its severity."""

    place: int
    keyword: str
    severities: frozenset[str]


@dataclass(frozen=True, slots=True)
class _Function:
    """A function, the calls in it, and the choices between reporters (``tell = warning if``).

    ``answers``: the last of each triple it returns, where it says that it returns a place, a
    text and a name.
    """

    tree: ast.FunctionDef
    calls: tuple[ast.Call, ...]
    answers: tuple[ast.expr, ...]
    chosen: Mapping[str, _Reporter]


@dataclass(slots=True)
class _Module:
    """One file: its functions, its constants, and what in it reports under a private name."""

    functions: tuple[_Function, ...]
    constants: Mapping[str, str]
    carriers: Mapping[str, _Reporter]
    own: dict[str, _Reporter] = field(default_factory=dict)


_KNOWN = {
    **{word: _Reporter(2, "rule", frozenset({word})) for word in _ORDER},
    "Problem": _Reporter(3, "rule", _ANY),
    "Diagnostic": _Reporter(3, "rule", _ANY),
}


def reported(files: Iterable[Path]) -> tuple[Reported, ...]:
    """Every problem the code in ``files`` can report, by name."""
    modules = [_module(file) for file in sorted(set(files))]
    public: dict[str, _Reporter] = dict(_KNOWN)
    for module in modules:
        public.update(module.carriers)
    learned = True
    while learned:
        learned = sum(_learn(module, public) for module in modules) > 0
    found: dict[str, tuple[set[str], dict[str, None]]] = {}
    for module in modules:
        for name, severities, source in _made(module, public):
            told = found.setdefault(name, (set(), {}))
            told[0].update(severities)
            if source:
                told[1][source] = None
    return tuple(
        Reported(name, tuple(word for word in _ORDER if word in severities), tuple(sources))
        for name, (severities, sources) in sorted(found.items())
    )


def _module(file: Path) -> _Module:
    tree = ast.parse(file.read_text("utf-8"))
    constants = {
        target.id: node.value.value
        for node in tree.body
        if isinstance(node, ast.Assign)
        and isinstance(node.value, ast.Constant)
        and isinstance(node.value.value, str)
        for target in node.targets
        if isinstance(target, ast.Name)
    }
    nodes = list(ast.walk(tree))
    functions = tuple(_function(node) for node in nodes if isinstance(node, ast.FunctionDef))
    return _Module(functions, constants, dict(_carriers(nodes)))


def _function(tree: ast.FunctionDef) -> _Function:
    nodes = list(ast.walk(tree))
    calls = tuple(node for node in nodes if isinstance(node, ast.Call))
    triple = tree.returns is not None and ast.unparse(tree.returns).endswith(", str, str]")
    answers = tuple(
        node.value.elts[-1]
        for node in nodes
        if triple and isinstance(node, ast.Return) and isinstance(node.value, ast.Tuple)
    )
    return _Function(tree, calls, answers, dict(_chosen(nodes)))


def _chosen(nodes: Iterable[ast.AST]) -> Iterator[tuple[str, _Reporter]]:
    """``tell = warning if ... else note``: a reporter under a name of its own."""
    for node in nodes:
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.IfExp):
            ends = {getattr(end, "id", "") for end in (node.value.body, node.value.orelse)}
            for target in node.targets if ends <= set(_ORDER) else ():
                yield getattr(target, "id", ""), _Reporter(2, "rule", frozenset(ends))


def _carriers(nodes: Iterable[ast.AST]) -> Iterator[tuple[str, _Reporter]]:
    """Classes with a field ``rule``: what is wrong with a value that cannot be read, an error."""
    for node in nodes:
        if not isinstance(node, ast.ClassDef) or node.name in _KNOWN:
            continue
        said = [one.target for one in node.body if isinstance(one, ast.AnnAssign)]
        fields = [target.id for target in said if isinstance(target, ast.Name)]
        for one in node.body:
            if isinstance(one, ast.FunctionDef) and one.name == "__init__":
                fields = [argument.arg for argument in one.args.args[1:]]
        if "rule" in fields:
            yield node.name, _Reporter(fields.index("rule"), "rule", frozenset({"error"}))


def _learn(module: _Module, public: dict[str, _Reporter]) -> int:
    """Find functions that pass an argument of theirs on as the name; how many are new."""
    new = 0
    for function in module.functions:
        name = function.tree.name
        home = module.own if name.startswith("_") else public
        if name in home or name in _KNOWN:
            continue
        reporter = _passing(function, module, public)
        if reporter is not None:
            home[name] = reporter
            new += 1
    return new


def _passing(
    function: _Function, module: _Module, public: Mapping[str, _Reporter]
) -> _Reporter | None:
    arguments = function.tree.args
    names = [one.arg for one in (*arguments.args, *arguments.kwonlyargs) if one.arg != "self"]
    for call, reporter in _reports(function, module, public):
        given = _given(call, reporter)
        if isinstance(given, ast.Name) and given.id in names:
            severities = reporter.severities or _severity(call)
            return _Reporter(names.index(given.id), given.id, severities)
    return None


def _reports(
    function: _Function, module: _Module, public: Mapping[str, _Reporter]
) -> Iterator[tuple[ast.Call, _Reporter]]:
    """Calls in ``function`` of what reports."""
    for call in function.calls:
        name = getattr(call.func, "id", getattr(call.func, "attr", ""))
        reporter = module.own.get(name) or function.chosen.get(name) or public.get(name)
        if reporter is not None:
            yield call, reporter


def _given(call: ast.Call, reporter: _Reporter) -> ast.expr | None:
    for keyword in call.keywords:
        if keyword.arg == reporter.keyword:
            return keyword.value
    return call.args[reporter.place] if len(call.args) > reporter.place else None


def _made(
    module: _Module, public: Mapping[str, _Reporter]
) -> Iterator[tuple[str, frozenset[str], str]]:
    for function in module.functions:
        for call, reporter in _reports(function, module, public):
            severities = reporter.severities or _severity(call)
            for name in _names(_given(call, reporter), module):
                yield name, severities, _source(call)
        for answer in function.answers:
            for name in _names(answer, module):
                yield name, frozenset({"error"}), ""


def _names(given: ast.expr | None, module: _Module) -> list[str]:
    if isinstance(given, ast.IfExp):
        return _names(given.body, module) + _names(given.orelse, module)
    said = given.value if isinstance(given, ast.Constant) else None
    if isinstance(given, ast.Name):
        said = module.constants.get(given.id)
    return [said] if isinstance(said, str) and _NAME.fullmatch(said) else []


def _severity(call: ast.Call) -> frozenset[str]:
    """``Severity.ERROR`` among the arguments."""
    words = {
        node.attr.lower()
        for one in call.args
        for node in ast.walk(one)
        if isinstance(node, ast.Attribute) and getattr(node.value, "id", "") == "Severity"
    }
    return frozenset(words & set(_ORDER))


def _source(call: ast.Call) -> str:
    for keyword in call.keywords:
        if keyword.arg == "source" and isinstance(keyword.value, ast.Constant):
            return str(keyword.value.value)
    return ""
