"""What the command says where it cannot watch."""

from pathlib import Path

import pytest
from click.testing import CliRunner

from foredge.cli import watch_command


def run(*arguments: str) -> tuple[int, str]:
    done = CliRunner().invoke(watch_command.command, list(arguments))
    return done.exit_code, done.output


def test_without_watchfiles_it_names_the_line_that_installs_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    spec = tmp_path / "book.yaml"
    spec.write_text("title: A\n", encoding="utf-8")
    monkeypatch.setattr(watch_command, "find_spec", lambda name: None)
    code, said = run(str(spec))
    assert code == 2 and "pip install 'foredge[watch]'" in said


def test_it_wants_one_spec_that_is_there_in_one_variant(tmp_path: Path) -> None:
    missing = tmp_path / "none.yaml"
    assert run(str(missing))[0] == 2
    code, said = run(str(missing), "--variant", "all")
    assert code == 2 and "one variant" in said
