"""What the browser tests do where something is missing on the machine."""

import os
from typing import NoReturn

import pytest


def without(reason: str) -> NoReturn:
    """Skip, or fail where ``FOREDGE_BROWSER=required`` says that everything must be there."""
    if os.environ.get("FOREDGE_BROWSER") == "required":
        pytest.fail(f"the browser tests are required, and {reason}")
    pytest.skip(reason)
