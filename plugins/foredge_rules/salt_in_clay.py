"""Salt in a clay against mould."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from foredge.contract import Build, Problem, Severity, reliefs_of, skin_of
from foredge_rules.telling import told


@dataclass(frozen=True, slots=True)
class SaltInClay:
    """It draws water as long as it is there."""

    kind: str = "rule"
    name: str = "salt-in-clay"
    title: str = "Salt in the clay"
    severity: Severity = Severity.WARNING
    consequence: str = "It draws damp out of the air, blooms white through paint, and eats metal"
    remedy: str = "Leave it out: thin layers that dry fast are what keeps mould away"
    source: str = (
        "from memory; Ultimate Paper Mache, 'How to keep mold from ruining your paper mache', on "
        "drying"
    )

    def test(self, build: Build) -> Iterable[Problem]:
        """Each skin that is kept with salt; the room says how damp it will be."""
        humidity = build.book.bench.room.humidity
        room = ""
        if humidity is not None:
            room = f", in a room at {humidity.value * 100:.0f} % humidity"
        for relief in reliefs_of(build.book):
            skin = skin_of(build.book, relief)
            if getattr(skin.options, "preservative", "") == "salt":
                yield told(
                    self,
                    (*skin.path, "preservative"),
                    f"the clay on the {relief.options.on} is kept with salt{room}",
                )


PLUGIN = SaltInClay()
