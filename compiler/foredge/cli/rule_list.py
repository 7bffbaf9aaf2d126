"""``foredge check --rules``: what the rules look for, and who says so."""

from __future__ import annotations

import json

import click

from foredge.registry import Registry


def print_rules(registry: Registry, form: str = "text") -> None:
    """Every rule plugin by name: severity, what it is about, consequence, remedy, source."""
    rows = [_row(registry, name) for name in registry.names("rule")]
    if form == "json":
        click.echo(json.dumps(rows, ensure_ascii=False, indent=2))
        return
    for row in rows:
        click.echo(f"{row['name']}   {row['severity']}")
        for key in ("title", "consequence", "remedy", "source"):
            if row[key]:
                click.echo(f"    {key}: {row[key]}")


def _row(registry: Registry, name: str) -> dict[str, str]:
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
