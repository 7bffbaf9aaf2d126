"""The README's own words are run: its files are written, its commands must succeed."""

import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).resolve().parents[1]
README = (CHECKOUT / "README.md").read_text(encoding="utf-8")
BLOCK = re.compile(r"^```(\w+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
FILE = re.compile(r"# file: (\S+)\n")


@pytest.fixture(scope="module")
def desk(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the demo specs, every file of the README, and a ``foredge`` command."""
    folder = tmp_path_factory.mktemp("desk")
    shutil.copytree(CHECKOUT / "specs", folder / "specs", ignore=shutil.ignore_patterns("built"))
    for _, body in BLOCK.findall(README):
        named = FILE.match(body)
        if named:
            file = folder / named.group(1)
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(body, encoding="utf-8")
    command = folder / "bin" / "foredge"
    command.parent.mkdir()
    command.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m foredge "$@"\n', encoding="utf-8")
    command.chmod(0o755)
    return folder


def shell(line: str, folder: Path, **more: str) -> subprocess.CompletedProcess[str]:
    path = os.pathsep.join((str(folder / "bin"), os.environ["PATH"]))
    ours = os.pathsep.join(str(CHECKOUT / part) for part in ("compiler", "plugins"))
    environment = {**os.environ, "PATH": path, "PYTHONPATH": ours, **more}
    return subprocess.run(
        line, shell=True, cwd=folder, env=environment, capture_output=True, text=True, check=False
    )


def commands() -> list[str]:
    lines = [
        line for kind, body in BLOCK.findall(README) if kind == "sh" for line in body.split("\n")
    ]
    return [line for line in lines if line]


@pytest.mark.parametrize("line", commands())
def test_a_command_of_the_readme_succeeds(line: str, desk: Path) -> None:
    # Plain "specs/*.yaml" also finds the spec that needs the plugin; CI has only its own specs.
    if "*" in line:
        (desk / "specs" / "patchwork-log.yaml").unlink(missing_ok=True)
    done = shell(line, desk)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_explained_number_is_as_printed(desk: Path) -> None:
    shown = re.search(r"^    (case\.board\.width .*)\n    (  = .*)$", README, re.MULTILINE)
    assert shown is not None
    printed = shell("foredge explain specs/saltmarsh-tide-book.yaml case.board.width", desk).stdout
    assert printed.splitlines()[:2] == [shown.group(1), shown.group(2)]


def test_readings_make_it_firm(desk: Path) -> None:
    told = shell("foredge explain specs/lamplighter-log-1.yaml case.board.width", desk).stdout
    assert "provisional" not in told
    assert "firm" in told.splitlines()[0]


def test_the_plugin_works_as_an_installed_package(desk: Path, tmp_path: Path) -> None:
    site = tmp_path / "site"
    arguments = f"-m pip install -q --no-deps --no-build-isolation --target {site} ."
    done = shell(f'"{sys.executable}" {arguments}', desk, PIP_DISABLE_PIP_VERSION_CHECK="1")
    assert done.returncode == 0, done.stderr
    ours = [str(site), str(CHECKOUT / "compiler"), str(CHECKOUT / "plugins")]
    listed = shell("foredge plugins", desk, PYTHONPATH=os.pathsep.join(ours)).stdout
    assert re.search(r"^covering +split-wrap +foredge-split-wrap +1\.0$", listed, re.MULTILINE)


def test_the_pictures_are_files_that_the_demo_specs_give() -> None:
    """That these are fresh, the test of the built output sees to."""
    pictures = re.findall(r"!\[([^\]]+)\]\(([^)]+)\)", README)
    assert len(pictures) >= 4
    for told, path in pictures:
        assert told
        assert path.startswith("specs/built/")
        assert (CHECKOUT / path).is_file(), f"{path} is not there; run make fresh"


def test_the_first_paragraph_states_the_job() -> None:
    first = README.split("\n\n")[1]
    for word in ("YAML spec", "handmade", "bench", "build sheet"):
        assert word in first


def test_the_two_commands_are_make_targets() -> None:
    makefile = (CHECKOUT / "Makefile").read_text(encoding="utf-8")
    for target in ("demo", "test"):
        assert f"    make {target} " in README
        assert re.search(rf"^{target}:", makefile, re.MULTILINE)
