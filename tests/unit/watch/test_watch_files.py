"""What a spec is made of: itself, what it extends, the files it names."""

from pathlib import Path

from foredge.watch.files import files_of


def put(folder: Path, name: str, text: str) -> Path:
    place = folder / name
    place.parent.mkdir(exist_ok=True)
    place.write_text(text, encoding="utf-8")
    return place


def test_the_spec_what_it_extends_and_the_fonts_of_both(tmp_path: Path) -> None:
    base = put(tmp_path, "parts/base.yaml", "title: A\nembellishment: [{font: own.ttf}]\n")
    spec = put(
        tmp_path, "book.yaml", "extends: parts/base.yaml\nembellishment: [{font: fonts/a.otf}]\n"
    )
    assert files_of(str(spec), None, ()) >= {
        spec,
        base,
        tmp_path / "parts" / "own.ttf",
        tmp_path / "fonts" / "a.otf",
    }


def test_a_spec_that_cannot_be_read_is_watched_all_the_same(tmp_path: Path) -> None:
    spec = put(tmp_path, "book.yaml", "title: [\n")
    assert files_of(str(spec), None, ()) == {spec}
    missing = tmp_path / "none.yaml"
    assert files_of(str(missing), "pocket", ()) == {missing}
