"""Hypothesis draws the same examples every time, so that a run says the same twice."""

from hypothesis import settings

settings.register_profile("steady", derandomize=True)
settings.load_profile("steady")
