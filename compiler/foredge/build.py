"""The Build, where emitters look for it."""

from foredge.contract.build import Build

__all__ = ["Build"]
