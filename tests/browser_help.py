"""What the browser tests do where something is missing on the machine."""

import os
from importlib import import_module
from typing import Any, NoReturn

import pytest


def without(reason: str) -> NoReturn:
    """Skip, or fail where ``FOREDGE_BROWSER=required`` says that everything must be there."""
    if os.environ.get("FOREDGE_BROWSER") == "required":
        pytest.fail(f"the browser tests are required, and {reason}")
    pytest.skip(reason, allow_module_level=True)


def needed(module: str) -> Any:
    """A library of the extra ``test``."""
    try:
        return import_module(module)
    except ImportError:
        without(f"{module} is not installed; pip install 'foredge[test]'")
