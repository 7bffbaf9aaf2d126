"""Ask every rule plugin about the whole build."""

from __future__ import annotations

from foredge.contract import Build, Problem, error
from foredge.registry import Registry


def check_rules(build: Build, registry: Registry) -> list[Problem]:
    """What the rules find; a rule that fails is one problem that names it."""
    problems: list[Problem] = []
    for name in registry.names("rule"):
        found = registry.find("rule", name)
        assert found is not None
        try:
            problems += found.plugin.test(build)
        except Exception as failure:
            words = f"{type(failure).__name__}: {failure}"
            problems.append(
                error(
                    (),
                    f"the rule '{name}' of {found.owner} failed: {words}",
                    "plugin-failed",
                    remedy="This is a fault in the plugin; report it to whoever made it",
                )
            )
    return problems
