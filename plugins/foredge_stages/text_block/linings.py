"""Super and spine lining: blanks before gate G2, their sizes after it."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Book,
    Figures,
    Piece,
    Problem,
    Quantity,
    cited,
    cloth_figures,
    error,
    minimum,
    number,
    paper_figures,
    warning,
)
from foredge_stages.text_block.block import Block
from foredge_stages.text_block.options import TextBlockOptions
from foredge_stages.text_block.terms import (
    CHOICE,
    SECTION,
    mm,
    name,
)

SUPER = name("super")
LINING = name("lining")


@dataclass(frozen=True, slots=True)
class Linings:
    """The blanks (``pieces``), and what they are trimmed to. ``layers`` of paper.

    No super where the gatherings are sewn through a strip that takes its place.
    """

    super: Piece | None
    lining: Piece | None
    flange: Quantity
    super_short: Quantity
    lining_short: Quantity
    quantities: tuple[Quantity, ...]
    problems: tuple[Problem, ...]

    @property
    def pieces(self) -> tuple[Piece, ...]:
        """What is cut for the spine."""
        return tuple(piece for piece in (self.super, self.lining) if piece is not None)


def line(
    book: Book,
    options: TextBlockOptions,
    block: Block,
    kettle: Quantity,
    *,
    sewn_through: bool = False,
) -> Linings:
    """Super and lining; ``kettle`` is the end station's distance from the finished edge.

    ``sewn_through``: the sewing brings the cloth that a super would be.
    """
    relief = book.relief_on_board()
    flange = _flange(book, options, relief)
    short = _super_short(book, options, kettle)
    lining_short = _lining_short(book, options)
    width, height = _super_size(book, block, flange, short)
    layers = options.lining.layers
    of_super = () if sewn_through else (flange, short, width, height)
    return Linings(
        super=None if sewn_through else _super(book, options, block, flange, short),
        lining=_lining(book, options, block, lining_short),
        flange=flange,
        super_short=short,
        lining_short=lining_short,
        quantities=(*of_super, lining_short, *_lining_size(block, lining_short))
        if layers is None or layers.value > 0
        else (*of_super, lining_short),
        problems=()
        if sewn_through
        else tuple(_problems(book, options, flange, short, lining_short, kettle, relief)),
    )


def _lining_short(book: Book, options: TextBlockOptions) -> Quantity:
    chosen = options.lining.short
    short = book.default("lining-short") if chosen is None else chosen
    return short.named(
        name("lining.short"),
        label="lining short of the block at each end",
        rule="the lining must not show at head or tail",
        source=cited(short, CHOICE),
    )


def _super_size(
    book: Book, block: Block, flange: Quantity, short: Quantity
) -> tuple[Quantity, Quantity]:
    """Width and height once the block is measured."""
    width = (block.spine + 2 * flange).named(
        name("super.width"),
        label="super, width",
        rule="the spine and a flange on each side",
        source=cited(book.practice("super-flange")),
    )
    height = (block.height - 2 * short).named(
        name("super.height"),
        label="super, height",
        rule="short of the block at head and tail, still over the kettle stitches",
        source=cited(book.practice("super-short")),
    )
    return width, height


def super_cloth(book: Book, options: TextBlockOptions) -> Figures:
    """The cloth of the super: the maker's, else gauze, and muslin under a relief."""
    usual = "muslin" if book.relief_on_board() else "super"
    return cloth_figures(book, options.super.stock, options.super.material or usual)


def _flange(book: Book, options: TextBlockOptions, relief: bool) -> Quantity:
    usual = book.default("super-flange-relief" if relief else "super-flange")
    chosen = options.super.flange
    return (usual if chosen is None else chosen).named(
        name("super.flange"),
        label="super on each board",
        rule="wider, because something raised is planned on a board"
        if relief and chosen is None
        else "what carries the block in its case",
        source=cited(usual if chosen is None else chosen, CHOICE),
    )


def _super_short(book: Book, options: TextBlockOptions, kettle: Quantity) -> Quantity:
    chosen = options.super.short
    usual = book.default("super-short")
    # Three quarters of the way to the kettle stitch still covers it.
    short = minimum(usual, kettle * number(0.75)) if chosen is None else chosen
    return book.size(short).named(
        name("super.short"),
        label="super short of the block at each end",
        rule="6 to 8 mm, but never so short that a kettle stitch lies bare",
        source=cited(usual),
    )


def _height(book: Book, options: TextBlockOptions, short: Quantity) -> Quantity:
    """Cut by the height the block is trimmed to later, which is planned and not measured."""
    height = options.leaf.height - 2 * short
    # Nothing left is an error; the size still has to be a size.
    return book.size(height) if height.value > 1 else options.leaf.height


def _super(
    book: Book, options: TextBlockOptions, block: Block, flange: Quantity, short: Quantity
) -> Piece:
    allowance = book.default("blank-trim")
    return Piece(
        name=SUPER,
        title="Super",
        count=number(1),
        width=book.blank(block.spine + 2 * flange, 2 * allowance),
        height=_height(book, options, short),
        grain="height",
        stock=options.super.stock,
        material=book.words("cloth", super_cloth(book, options).row, "title"),
        blank=True,
        trimmed_to="the flange asked for, measured from each shoulder once the spine is dry",
    )


def _lining(book: Book, options: TextBlockOptions, block: Block, short: Quantity) -> Piece | None:
    layers = number(1) if options.lining.layers is None else options.lining.layers
    if layers.value < 1:
        return None
    return Piece(
        name=LINING,
        title="Spine lining",
        count=layers,
        width=book.blank(block.spine, book.default("blank-trim")),
        height=_height(book, options, short),
        grain="height",
        stock=options.lining.stock,
        material=book.words(
            "paper",
            paper_figures(book, options.lining.stock, options.lining.material).row,
            "title",
        ),
        blank=True,
        trimmed_to="flush with both shoulders once the spine is dry",
        kinds=("sheet",),
    )


def _lining_size(block: Block, short: Quantity) -> tuple[Quantity, Quantity]:
    width = (1 * block.spine).named(
        name("lining.width"),
        label="lining, width",
        rule="from shoulder to shoulder, the grain from head to tail",
        source="Matt T. Roberts and Don Etherington, Bookbinding and the Conservation of Books, "
        "1982, spine lining paper",
    )
    height = (block.height - 2 * short).named(
        name("lining.height"),
        label="lining, height",
        rule="a little short of the block at head and tail",
        source="common practice",
    )
    return width, height


def _nothing_left(
    options: TextBlockOptions, short: Quantity, lining_short: Quantity
) -> list[Problem]:
    height = options.leaf.height
    cloth, paper = options.super.short, options.lining.short
    return [
        error(
            (SECTION, "leaf", "height") if said is None else (SECTION, what, "short"),
            f"nothing is left of a {what} that ends {mm(end)} short of head and tail of a leaf "
            f"{mm(height)} high",
            "lining-no-height",
            remedy="Let it reach nearer to head and tail",
        )
        for what, end, said in (("super", short, cloth), ("lining", lining_short, paper))
        if height.value - 2 * end.value <= 1
    ]


def _problems(
    book: Book,
    options: TextBlockOptions,
    flange: Quantity,
    short: Quantity,
    lining_short: Quantity,
    kettle: Quantity,
    relief: bool,
) -> list[Problem]:
    found = _nothing_left(options, short, lining_short)
    if not found and short.value >= kettle.value:
        found.append(
            warning(
                (SECTION, "super", "short"),
                f"the super ends {mm(short)} from head and tail, the kettle stitches lie at "
                f"{mm(kettle)}",
                "super-off-kettles",
                consequence="The kettle stitches pull out of the glue",
                remedy=f"Let the super reach within {mm(book.default('super-short'))} of the ends",
                source="common practice",
            )
        )
    least = book.default("super-flange-relief")
    if relief and flange.value < least.value:
        found.append(
            warning(
                (SECTION, "super", "flange"),
                f"the super lies {mm(flange)} on each board, which carries a relief",
                "super-narrow-under-relief",
                consequence="The weight of the relief pulls the board off its hinge",
                remedy=f"Give it {mm(least)}, and take muslin rather than gauze",
                source=cited(least),
            )
        )
    return found
