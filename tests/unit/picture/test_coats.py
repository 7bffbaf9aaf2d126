"""What coats make of a surface."""

from __future__ import annotations

from finishing_books import book
from foredge.contract import Region
from foredge.picture.coats import coats_on
from foredge.picture.colours import brightness, find, read

BARE = read("#ddd0b1")
FRONT = Region("front")


def on_front(*coats: str):
    return coats_on(book(*coats)).on(FRONT, BARE)


def test_nothing_on_it_leaves_it_as_it_is() -> None:
    assert on_front().flat == BARE
    assert on_front("{use: brush-varnish}", "{use: seal}").flat == BARE


def test_a_base_coat_hides_what_is_under_it() -> None:
    made = on_front("{use: wash, colour: umber}", "{use: base-coat, colour: oxblood}")
    assert made.flat == find("oxblood")


def test_a_wash_darkens_and_a_dry_brush_lights() -> None:
    plain = on_front("{use: base-coat, colour: moss}")
    washed = on_front("{use: base-coat, colour: moss}", "{use: wash, colour: lamp black}")
    brushed = on_front("{use: base-coat, colour: moss}", "{use: dry-brush, colour: bone}")
    assert brightness(washed.flat) < brightness(plain.flat) < brightness(brushed.flat)
    assert washed.hollows == find("lamp black")
    assert brushed.rims == find("bone")


def test_a_share_of_metal_stays_on_the_heights() -> None:
    made = on_front("{use: base-coat, colour: moss}", "{use: metallic, colour: brass, share: 30 %}")
    assert made.base == find("moss")
    assert made.heights is not None
    assert (made.heights.share, made.heights.metal) == (0.3, True)


def test_what_is_left_clean_keeps_its_colour() -> None:
    made = on_front("{use: base-coat, on: faces, leave: [front], colour: moss}")
    assert made.flat == BARE
