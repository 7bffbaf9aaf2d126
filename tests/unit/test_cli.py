"""The command line: exit status, what is printed where, and what is left on disk."""

import json
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from foredge.cli import main

PLAIN = (Path(__file__).parents[1] / "specs-valid" / "plain-journal.yaml").read_text("utf-8")


@pytest.fixture(autouse=True)
def bench(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "plain.yaml").write_text(PLAIN, encoding="utf-8")
    return tmp_path


def run(*arguments: str) -> Result:
    result = CliRunner().invoke(main, arguments)
    if result.exception is not None and not isinstance(result.exception, SystemExit):
        raise result.exception
    return result


def spoil(text: str, old: str = "width: 140 mm") -> None:
    assert old in PLAIN
    Path("plain.yaml").write_text(PLAIN.replace(old, text), encoding="utf-8")


def test_a_sound_spec_is_checked_in_silence() -> None:
    result = run("check", "plain.yaml")
    assert (result.exit_code, result.output) == (0, "")


def test_errors_exit_1_warnings_0_and_strict_1() -> None:
    spoil("width: 140 g")
    assert run("check", "plain.yaml").exit_code == 1
    spoil("thread: thread, end_distance: 6 mm}", "thread: thread}")
    assert run("check", "plain.yaml").exit_code == 0
    assert run("check", "plain.yaml", "--strict").exit_code == 1


def test_wrong_use_exits_2() -> None:
    assert run("check").exit_code == 2
    assert run("bind", "plain.yaml").exit_code == 2
    assert run("build", "plain.yaml").exit_code == 2


@pytest.mark.parametrize(
    ("spec", "says"),
    [
        ("gone.yaml", "gone.yaml:1:1: error: there is no file 'gone.yaml'. [file-not-found]"),
        (".", ".:1:1: error: '.' is a folder, not a file. [path-is-a-folder]"),
    ],
)
def test_a_path_that_is_no_spec(spec: str, says: str) -> None:
    result = run("check", spec)
    assert result.exit_code == 1
    assert result.stderr.strip() == says


def test_several_files_at_once() -> None:
    Path("other.yaml").write_text(PLAIN.replace("140 mm", "140"), encoding="utf-8")
    spoil("width: 140 g")
    lines = run("check", "plain.yaml", "other.yaml").stderr.splitlines()
    assert [line.split(":")[0] for line in lines] == ["plain.yaml", "other.yaml"]


def test_problems_as_json_go_to_standard_output() -> None:
    spoil("width: 140 g")
    result = run("check", "plain.yaml", "--format", "json")
    (found,) = json.loads(result.stdout)
    assert (found["file"], found["line"], found["severity"], found["rule"]) == (
        "plain.yaml",
        13,
        "error",
        "wrong-dimension",
    )


def test_a_failed_build_leaves_the_former_output_whole() -> None:
    assert run("build", "plain.yaml", "--out", "out").exit_code == 0
    before = {file: file.read_bytes() for file in Path("out").rglob("*") if file.is_file()}
    assert Path("out/plain/build-sheet.md") in before
    spoil("width: 140 g")
    assert run("build", "plain.yaml", "--out", "out").exit_code == 1
    after = {file: file.read_bytes() for file in Path("out").rglob("*") if file.is_file()}
    assert after == before


def test_build_check_tells_what_is_stale_and_writes_nothing() -> None:
    result = run("build", "plain.yaml", "--out", "out", "--check")
    assert result.exit_code == 1
    assert not Path("out").exists()
    assert run("build", "plain.yaml", "--out", "out").exit_code == 0
    assert run("build", "plain.yaml", "--out", "out", "--check").exit_code == 0
    spoil("width: 141 mm")
    result = run("build", "plain.yaml", "--out", "out", "--check")
    assert result.exit_code == 1
    assert "build-sheet.md" in result.stderr
    assert "run: foredge build plain.yaml --out out" in result.stderr


def test_an_output_folder_that_cannot_be_written() -> None:
    Path("out").write_text("a file is in the way", encoding="utf-8")
    result = run("build", "plain.yaml", "--out", "out")
    assert result.exit_code == 1
    assert "out" in result.stderr
    assert "[output-not-writable]" in result.stderr
    assert Path("out").read_text(encoding="utf-8") == "a file is in the way"


def test_two_specs_of_one_name_are_refused() -> None:
    Path("sub").mkdir()
    Path("sub/plain.yaml").write_text(PLAIN, encoding="utf-8")
    result = run("build", "plain.yaml", "sub/plain.yaml", "--out", "out")
    assert result.exit_code == 2
    assert "are called 'plain'" in result.stderr


def test_variants_are_built_by_name_or_all_together() -> None:
    overlay = "\nvariants:\n  pocket: {text_block: {leaf: {width: 95 mm, height: 140 mm}}}\n"
    Path("plain.yaml").write_text(PLAIN + overlay, encoding="utf-8")
    assert run("build", "plain.yaml", "--out", "one", "--variant", "pocket").exit_code == 0
    assert [folder.name for folder in Path("one").iterdir()] == ["plain@pocket"]
    assert run("build", "plain.yaml", "--out", "two", "--variant", "all").exit_code == 0
    assert sorted(folder.name for folder in Path("two").iterdir()) == ["plain", "plain@pocket"]


def test_what_was_accepted_stands_on_the_sheet_with_its_reason() -> None:
    assert run("build", "plain.yaml", "--out", "out").exit_code == 0
    text = Path("out/plain/build-sheet.md").read_text(encoding="utf-8")
    assert "## Accepted, with a reason" in text
    assert "Accepted: Letters are pasted in later. `swell-large`" in text


EMITTER = """
class Count:
    kind, name, title = "emitter", "step-count", "How many steps"

    def emit(self, build):
        return {"steps.txt": f"{len(build.order)}\\n".encode()}

PLUGIN = Count()
"""


def test_an_emitter_from_outside_writes_its_file_too() -> None:
    Path("count.py").write_text(EMITTER, encoding="utf-8")
    result = run("build", "plain.yaml", "--out", "out", "--plugin", "count.py")
    assert result.exit_code == 0, result.stderr
    assert int(Path("out/plain/steps.txt").read_text(encoding="utf-8")) > 10
    assert Path("out/plain/build-sheet.md").exists()


def test_an_emitter_that_fails_is_named_and_nothing_is_written() -> None:
    Path("count.py").write_text(EMITTER.replace("build.order", "build.ordr"), encoding="utf-8")
    result = run("build", "plain.yaml", "--out", "out", "--plugin", "count.py")
    assert result.exit_code == 1
    assert "error: the emitter 'step-count' failed: AttributeError" in result.stderr
    assert not Path("out").exists()


def test_same_spec_same_bytes() -> None:
    for out in ("one", "two"):
        assert run("build", "plain.yaml", "--out", out).exit_code == 0
    first = {f.relative_to("one"): f.read_bytes() for f in Path("one").rglob("*") if f.is_file()}
    second = {f.relative_to("two"): f.read_bytes() for f in Path("two").rglob("*") if f.is_file()}
    assert first == second


def test_explain_one_quantity_or_list_them_all() -> None:
    listed = run("explain", "plain.yaml")
    assert listed.exit_code == 0
    assert "case.board.width" in listed.stdout
    told = run("explain", "plain.yaml", "case.board.width")
    assert told.exit_code == 0
    assert "rests on G1 and G2" in told.stdout
    assert "text_block.leaf.width, line 13" in told.stdout


def test_explain_suggests_near_names() -> None:
    result = run("explain", "plain.yaml", "case.bord.width")
    assert result.exit_code == 2
    assert "did you mean case.board.width" in result.stderr


def test_plugins_lists_kind_name_owner_and_version() -> None:
    lines = run("plugins").stdout.splitlines()
    assert lines[0].split() == ["kind", "name", "owner", "version"]
    assert any(line.split()[:2] == ["sewing", "link-stitch"] for line in lines)


def test_the_rules_are_listed_with_their_sources() -> None:
    listed = json.loads(run("check", "--rules", "--format", "json").stdout)
    assert {"piece-larger-than-stock", "room-cold"} <= {one["name"] for one in listed}
    plugins = [one for one in listed if "title" in one]
    assert "room-cold" in {one["name"] for one in plugins}
    assert all(one["source"] and one["remedy"] and one["title"] for one in plugins)
    text = run("check", "--rules").stdout
    assert "room-cold   error" in text.splitlines()


def test_schema_prints_or_writes_the_same() -> None:
    printed = run("schema").stdout
    assert run("schema", "--out", "book.schema.json").exit_code == 0
    assert Path("book.schema.json").read_text(encoding="utf-8") == printed
    assert json.loads(printed)["$schema"].startswith("https://json-schema.org/draft/2020-12")


def test_new_writes_a_spec_that_compiles_and_never_overwrites() -> None:
    assert run("new", "mine.yaml", "--title", 'Bo\'s: "first" #1').exit_code == 0
    result = run("check", "mine.yaml")
    assert (result.exit_code, "error" in result.stderr) == (0, False)
    before = Path("mine.yaml").read_bytes()
    assert run("new", "mine.yaml").exit_code == 1
    assert Path("mine.yaml").read_bytes() == before
