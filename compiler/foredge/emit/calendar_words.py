"""Days and times of the plan in words, the same on every system."""

from __future__ import annotations

from foredge.contract import WorkPlan
from foredge.contract.work_plan import DAY

DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
MONTHS = ("Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec")


def day_words(plan: WorkPlan, minute: int, *, year: bool = False) -> str:
    """``Tue 1 Dec``, with ``year`` ``Tue 1 Dec 2026``; without dates ``Tue of week 1``."""
    when = plan.when(minute)
    day = DAYS[when.weekday()]
    if not plan.dated:
        return f"{day} of week {minute // (7 * DAY) + 1}"
    words = f"{day} {when.day} {MONTHS[when.month - 1]}"
    return f"{words} {when.year}" if year else words


def clock_words(plan: WorkPlan, minute: int) -> str:
    """``19:30``."""
    when = plan.when(minute)
    return f"{when.hour:02d}:{when.minute:02d}"


def moment(plan: WorkPlan, minute: int, *, year: bool = False) -> str:
    """``Tue 1 Dec, 19:30``."""
    return f"{day_words(plan, minute, year=year)}, {clock_words(plan, minute)}"
