"""Scheduling on plain data: tasks, resources, lags and working windows in whole minutes."""

from .calendar import Calendar, Window
from .model import Lag, Schedule, Segment, Task
from .solve import solve
from .verify import verify

__all__ = ["Calendar", "Lag", "Schedule", "Segment", "Task", "Window", "solve", "verify"]
