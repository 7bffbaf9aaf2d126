"""Seeds and grains pressed into wet clay."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class SwellingInclusions:
    """They drink the water of the clay."""

    kind: str = "rule"
    name: str = "swelling-inclusions"
    title: str = "Inclusions that swell in wet clay"
    severity: Severity = Severity.WARNING
    consequence: str = "They swell, lift the clay round them, and go soft; later they draw insects"
    remedy: str = "Cast them in clay or plaster, or press them in when the clay is dry, in glue"
    source: str = "common practice (reported by one maker)"

    def test(self, build: Build) -> Iterable[Problem]:
        """Each inclusion of the kind seeds."""
        for relief in reliefs_of(build.book):
            for place, one in enumerate(relief.options.inclusions):
                if one.kind == "seeds":
                    yield told(
                        self,
                        (*relief.path, "inclusions", place),
                        f"'{one.what}' would be set dry into wet clay",
                    )


PLUGIN = SwellingInclusions()
