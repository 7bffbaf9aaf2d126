"""``foredge check`` on a plain book loads none of the heavy libraries."""

import os
import subprocess
import sys
from pathlib import Path

CHECKOUT = Path(__file__).resolve().parents[2]
HEAVY = (
    "manifold3d",
    "reportlab",
    "rich",
    "fontTools",
    "HersheyFonts",
    "ortools",
    "icalendar",
    "foredge.plan.schedule",
    "pint",
    "jinja2",
)
PROBE = f"""
import sys
from foredge.cli import main
try:
    main(["check", sys.argv[1]])
except SystemExit as done:
    assert not done.code, done.code
print(*[name for name in {HEAVY!r} if name in sys.modules])
"""


def test_check_loads_no_heavy_library() -> None:
    spec = CHECKOUT / "tests" / "specs-valid" / "plain-journal.yaml"
    path = os.pathsep.join(str(CHECKOUT / part) for part in ("compiler", "plugins"))
    done = subprocess.run(
        [sys.executable, "-c", PROBE, str(spec)],
        env={**os.environ, "PYTHONPATH": path},
        capture_output=True,
        text=True,
        check=True,
    )
    assert done.stdout.split() == []
