"""The air of the bench's room: what no air can be, and what is likely a slip."""

from __future__ import annotations

from foredge.contract import Bench, Problem, error, warning

HOTTEST = 45.0
"""degC; nobody works at a bench in more (from memory)."""


def room_problems(bench: Bench) -> list[Problem]:
    """An error for air that holds more than all the water it can, a warning for great heat."""
    problems: list[Problem] = []
    humidity, temperature = bench.room.humidity, bench.room.temperature
    if humidity is not None and humidity.value > 1:
        text = (
            f"a relative humidity of {humidity.value * 100:.3g} % cannot be: air is full at 100 %"
        )
        remedy = "Read it off a hygrometer; a lived-in room has 30 to 70 %"
        problems.append(error(("bench", "room", "humidity"), text, "room-odd", remedy=remedy))
    if temperature is not None and temperature.value > HOTTEST:
        text = f"nobody works in a room of {temperature.value:.3g} degC"
        remedy = "Look at the unit: degF is read, too"
        problems.append(warning(("bench", "room", "temperature"), text, "room-odd", remedy=remedy))
    return problems
