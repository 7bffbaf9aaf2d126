"""``foredge check --rules``: what is looked for, and who says so."""

from __future__ import annotations

import json
from pathlib import Path

import click

import foredge
from foredge.registry import Registry
from foredge.reported import Reported, reported

Row = dict[str, str]


def print_rules(registry: Registry, form: str = "text") -> None:
    """Every rule by name: its severity, and what it says of itself.

    First the rule plugins, which look at the whole book; then what stages, parts and the
    reader of the spec report. Any name can stand under ``accept``; errors cannot be accepted.
    """
    plugins = registry.names("rule")
    rows = [_row(registry, name) for name in plugins]
    others = [_plain(one) for one in reported(_files(registry)) if one.name not in plugins]
    if form == "json":
        click.echo(json.dumps(rows + others, ensure_ascii=False, indent=2))
        return
    for row in rows + others:
        click.echo(f"{row['name']}   {row['severity']}")
        for key in ("title", "consequence", "remedy", "source"):
            if row.get(key):
                click.echo(f"    {key}: {row[key]}")


def _row(registry: Registry, name: str) -> Row:
    found = registry.find("rule", name)
    assert found is not None
    rule = found.plugin
    return {
        "name": rule.name,
        "severity": rule.severity.value,
        "title": rule.title,
        "consequence": rule.consequence,
        "remedy": rule.remedy,
        "source": rule.source,
    }


def _plain(one: Reported) -> Row:
    """A problem that code reports: its text is made where it is found, so none can stand here."""
    return {
        "name": one.name,
        "severity": " or ".join(one.severities),
        "source": "; ".join(one.sources),
    }


def _files(registry: Registry) -> list[Path]:
    """The compiler's own code, and that of every plugin: its package, or its one file."""
    files = list(Path(foredge.__file__).parent.rglob("*.py"))
    for one in registry.all():
        file = Path(one.file)
        package = (file.parent / "__init__.py").is_file()
        files += file.parent.rglob("*.py") if package else [file]
    return [file for file in dict.fromkeys(file.resolve() for file in files) if file.is_file()]
