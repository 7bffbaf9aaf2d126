"""What is shipped works: the wheel holds the data, every install compiles the demo."""

import os
import subprocess
import sys
import sysconfig
import zipfile
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[1]
DEMO = CHECKOUT / "specs" / "saltmarsh-tide-book.yaml"


def run(*arguments: str | Path, cwd: Path, path: str = "") -> str:
    environment = {**os.environ, "PYTHONPATH": path, "PIP_DISABLE_PIP_VERSION_CHECK": "1"}
    done = subprocess.run(
        [sys.executable, *map(str, arguments)],
        cwd=cwd,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
    )
    assert done.returncode == 0, done.stdout + done.stderr
    return done.stdout


@pytest.fixture(scope="module")
def wheel(tmp_path_factory: pytest.TempPathFactory) -> Path:
    out = tmp_path_factory.mktemp("wheel")
    run("-m", "build", "--wheel", "--no-isolation", "--outdir", out, CHECKOUT, cwd=out)
    return next(out.glob("*.whl"))


def test_the_wheel_holds_code_schemas_and_tables(wheel: Path) -> None:
    names = set(zipfile.ZipFile(wheel).namelist())
    for folder in ("schemas", "shared"):
        tracked = {
            f"foredge/_data/{folder}/{file.name}"
            for file in (CHECKOUT / folder).iterdir()
            if file.is_file()
        }
        assert tracked
        assert tracked <= names
    for root in ("compiler", "plugins"):
        modules = {
            str(file.relative_to(CHECKOUT / root)) for file in (CHECKOUT / root).rglob("*.py")
        }
        assert modules <= names
    templates = {name for name in names if name.endswith(".j2")}
    assert templates, "the emitters' templates"


def test_a_wheel_install_compiles_the_demo_elsewhere(wheel: Path, tmp_path: Path) -> None:
    target = tmp_path / "site"
    run("-m", "pip", "install", "-q", "--no-deps", "--target", target, wheel, cwd=tmp_path)
    where = run("-c", "import foredge; print(foredge.__file__)", cwd=tmp_path, path=str(target))
    assert Path(where.strip()).is_relative_to(target)
    _compile_demo(tmp_path, path=str(target))


def test_an_editable_install_compiles_the_demo_elsewhere(tmp_path: Path) -> None:
    prefix = tmp_path / "prefix"
    run(
        *("-m", "pip", "install", "-q", "--no-deps", "--no-build-isolation", "--ignore-installed"),
        *("--prefix", prefix, "-e", CHECKOUT),
        cwd=tmp_path,
    )
    site = sysconfig.get_path("purelib", vars={"base": str(prefix), "platbase": str(prefix)})
    pointers = [line for file in Path(site).glob("*.pth") for line in file.read_text().split()]
    assert {Path(line) for line in pointers} == {CHECKOUT / "compiler", CHECKOUT / "plugins"}
    _compile_demo(tmp_path, path=os.pathsep.join(pointers))


def _compile_demo(folder: Path, path: str) -> None:
    run("-m", "foredge", "build", DEMO, "--out", folder / "out", cwd=folder, path=path)
    sheet = folder / "out" / DEMO.stem / "build-sheet.md"
    assert "The Saltmarsh Tide Book" in sheet.read_text(encoding="utf-8")
