"""How the house is built: no circular imports, files and functions of a readable size."""

import ast
from collections.abc import Iterator
from graphlib import TopologicalSorter
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
ROOTS = (CHECKOUT / "compiler", CHECKOUT / "plugins")
FILES = {file: root for root in ROOTS for file in sorted(root.rglob("*.py"))}


def name_of(file: Path) -> str:
    parts = file.relative_to(FILES[file]).with_suffix("").parts
    return ".".join(parts[:-1] if parts[-1] == "__init__" else parts)


MODULES = {name_of(file): file for file in FILES}


def imported(file: Path) -> Iterator[str]:
    """Modules of ours that a file imports, wherever in it."""
    for node in ast.walk(ast.parse(file.read_text("utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and node.module:
            inner = [f"{node.module}.{alias.name}" for alias in node.names]
            yield from (name for name in (node.module, *inner))


def test_no_circular_imports_not_even_inside_functions() -> None:
    graph = {
        module: {
            name
            for name in imported(file)
            if name in MODULES and name != module and not module.startswith(f"{name}.")
        }
        for module, file in MODULES.items()
    }
    TopologicalSorter(graph).prepare()


def test_files_and_functions_stay_readable() -> None:
    """About 300 lines a file and 40 a function; what only lists exports is let off."""
    long = []
    for file in FILES:
        text = file.read_text("utf-8")
        if file.name != "__init__.py" and len(text.splitlines()) > 345:
            long.append(str(file))
        for node in ast.walk(ast.parse(text)):
            if isinstance(node, ast.FunctionDef) and (node.end_lineno or 0) - node.lineno > 60:
                long.append(f"{file}:{node.lineno} {node.name}")
    assert long == []
