"""``pulp-paste``: fine pulp, glue and starch, for what a spoon is too coarse for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from foredge.contract import (
    Book,
    Part,
    SkinFigures,
    SkinJob,
    SkinOptions,
    SkinResult,
    say,
    skin_figures,
)
from foredge_skins.batch import batch
from foredge_skins.mixing import mixed


class PulpPasteOptions(SkinOptions, frozen=True, kw_only=True, tag="pulp-paste"):
    """Paste of finely beaten pulp."""


@dataclass(frozen=True, slots=True)
class PulpPaste:
    """Put on with a brush and a pin, in thin layers."""

    kind: str = "skin"
    name: str = "pulp-paste"
    title: str = "Pulp paste"
    options: type[PulpPasteOptions] = PulpPasteOptions

    def figures(self, book: Book, part: Part[Any]) -> SkinFigures:
        """Row ``pulp-paste`` of the table ``clays``."""
        return skin_figures(book, part, "pulp-paste", "pulp paste")

    def mix(self, job: SkinJob) -> SkinResult:
        """Soak, beat very fine, squeeze, mix."""
        lay = (
            say("Dab it on with a stiff brush, and push it into shape with a pin."),
            say("Let each rise dry before the next is set beside it."),
        )
        return mixed(job, batch(job), lay)


PLUGIN = PulpPaste()
