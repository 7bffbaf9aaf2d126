"""A cover heavy for its block."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class CoverHeavyForHinge:
    """A relief is carried by two strips of cloth and paper."""

    kind: str = "rule"
    name: str = "cover-heavy-for-hinge"
    title: str = "A cover heavy for its hinge"
    severity: Severity = Severity.WARNING
    consequence: str = (
        "The cover drags when the book is opened, and the hinge tears out of the block"
    )
    remedy: str = (
        "Thin the skin, take a lighter clay, or give solid parts a core; muslin super "
        "and cloth-jointed end-papers hold longest"
    )
    source: str = "from memory: no published limit exists"

    def test(self, build: Build) -> Iterable[Problem]:
        """The dry relief of each board against the block it hangs on."""
        limit = build.book.practice("relief-mass-block").value
        for relief in reliefs_of(build.book):
            on = relief.options.on
            if on == "spine":
                continue
            share = build.quantity(f"sculpt.share.{on}").value
            if share <= limit:
                continue
            dry, block = (
                build.quantity(name).value for name in (f"sculpt.mass.{on}.dry", "text_block.mass")
            )
            times = build.quantity(f"sculpt.moment.{on}.times").value
            yield told(
                self,
                relief.path,
                f"the relief on the {on} board weighs about {dry:.0f} g dry, "
                f"{share * 100:.0f} % of the block's {block:.0f} g; it pulls "
                f"{times:.1f} times as hard on the joint as the bare cover",
            )


PLUGIN = CoverHeavyForHinge()
