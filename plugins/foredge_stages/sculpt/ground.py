"""The ground of a relief: a sealed bare board, the cloth of a covered case, a finished book."""

from __future__ import annotations

from dataclasses import dataclass

from foredge.contract import (
    Operation,
    Piece,
    Problem,
    Quantity,
    StageResult,
    Text,
    Use,
    Wetting,
    cautions,
    dry_in_room,
    glue,
    number,
    say,
    warning,
    wet,
)
from foredge_stages.sculpt.armature import mark_steps
from foredge_stages.sculpt.core import PER_AREA
from foredge_stages.sculpt.reading import Relief

SEALER = "pva-water"
MOST_COATS = 6


@dataclass(frozen=True, slots=True)
class Ground:
    """``after`` are the operations after which something may be fixed to it; ``begin`` those
    after which its first work begins. ``marked``: the outline is on it already."""

    work: StageResult
    after: tuple[str, ...]
    begin: tuple[str, ...]
    marked: bool


def prepare(relief: Relief) -> Ground:
    """Sealing, keying, masking and balancing, by what the relief is made on."""
    if relief.made_on == "bare-board":
        return _bare_board(relief)
    if relief.made_on == "covered-case":
        return _covered_case(relief)
    return _finished_book(relief)


def _bare_board(relief: Relief) -> Ground:
    cut = relief.upstream.fact("case.boards_cut", "case.cut-boards")
    if relief.options.seal == "none":
        return Ground(StageResult(), (cut,), (cut,), marked=False)
    coats = relief.options.coats
    times = int(min(coats.value, MOST_COATS)) if coats is not None else 2
    operations = []
    after: tuple[str, ...] = (cut,)
    for coat in range(1, times + 1):
        operations.append(_coat(relief, coat, times, after))
        after = (operations[-1].id,)
    return Ground(StageResult(operations=tuple(operations)), after, (cut,), marked=False)


def _coat(relief: Relief, coat: int, coats: int, after: tuple[str, ...]) -> Operation:
    book, panel, last = relief.book, relief.panel, coat == coats
    both = relief.options.seal == "both faces"
    edges = 2 * (panel.width + panel.height) * relief.upstream.quantity("case.board.thickness")
    area = number(2 if both else 1) * panel.width * panel.height + edges
    faces = "both faces and all four edges" if both else "the outside and all four edges"
    dry = dry_in_room(book, book.table("drying", "board-seal", "cure" if last else "next"))
    return Operation(
        relief.op("seal", coat),
        f"Seal the {relief.where}, {_ORDINAL[coat - 1]} coat",
        (
            *_first_coat(coat),
            say(f"Brush it thinly over {faces}; the edges drink most."),
            say("Stand the board on edge, air on both sides."),
            *_last_coat(last),
        ),
        book.practice("hand-coat") * area / PER_AREA + book.practice("hand-glue-face"),
        after=after,
        after_any=("case.wrap-edges",),
        wait=dry,
        waiting="on edge, air on both sides",
        cautions=cautions(book, "adhesives", SEALER),
        uses=(glue(book, SEALER, area, f"sealing the {relief.where}"),),
        wettings=(
            wet(book, SEALER, area, f"board-{relief.on}", "both" if both else "outside", dry),
        ),
        tools=("wide brush", "jar"),
    )


_ORDINAL = ("first", "second", "third", "fourth", "fifth", "sixth")


def _first_coat(coat: int) -> tuple[Text, ...]:
    if coat > 1:
        return (say("Look first that the coat before is dry: no cool spot, no shine of water."),)
    return (say("Stir white glue and water, 1 to 1."),)


def _last_coat(last: bool) -> tuple[Text, ...]:
    if not last:
        return ()
    return (
        say("Nothing is fixed to it before it is dry: a core over wet board shuts the water in."),
        say("The paste-down later takes glue or a mix here; plain paste does not hold on a seal."),
    )


def _covered_case(relief: Relief) -> Ground:
    covered = relief.upstream.fact("case.covered", "case.cover")
    balance = _balance(relief, covered)
    before = tuple(operation.id for operation in balance.operations) or (covered,)
    key = _key(relief, before, _masking(relief))
    after = tuple(one.id for one in key) or before
    return Ground(balance + StageResult(operations=key), after, (covered,), marked=bool(key))


def _balance(relief: Relief, covered: str) -> StageResult:
    """The counter-lining: paper inside the board, between the turn-ins."""
    if relief.options.counter_lining == "none" or relief.on == "spine":
        return StageResult()
    book = relief.book
    width, height = (_between_turn_ins(relief, side) for side in ("width", "height"))
    if min(width.value, height.value) <= 0:
        return StageResult(problems=(_no_room(relief, width, height),))
    name = f"sculpt.counter_lining.{relief.on}"
    piece = Piece(
        name,
        f"Counter-lining, {relief.on}",
        number(1),
        width,
        height,
        "height",
        material="strong plain paper, such as kraft",
        kinds=("sheet",),
    )
    area = width * height
    dry = dry_in_room(book, book.table("drying", "paste-down-dry", "next"))
    operation = Operation(
        relief.op("counter-line"),
        f"Counter-line the {relief.where}",
        (
            say("Cut the counter-lining {width} by {height}, the grain along the spine.",
                width=width, height=height),
            say("Glue it on the inside of the board, between the turn-ins, and rub it down."),
            say("It pulls inwards as the clay will pull outwards; let it dry under weight."),
        ),
        book.practice("hand-cut") + book.practice("hand-glue-face"),
        after=(covered,),
        wait=dry,
        waiting="under weight, blotters on the inside",
        resources=("hands", "weights"),
        cautions=("lifting-weights", *cautions(book, "adhesives", "pva")),
        pieces=(name,),
        uses=(glue(book, "pva", area, f"counter-lining, {relief.on}"),),
        wettings=(
            wet(book, "pva", area, f"board-{relief.on}", "inside", dry, layer="counter-lining"),
        ),
        tools=("glue brush", "bone folder", "blotters", "weights"),
        rescue="line it now, or let the finished book dry shut under weight a week longer",
    )  # fmt: skip
    return StageResult(quantities=(width, height), pieces=(piece,), operations=(operation,))


def _no_room(relief: Relief, width: Quantity, height: Quantity) -> Problem:
    short = "width" if width.value <= 0 else "height"
    return warning(
        (*relief.part.path, "on"),
        f"turn-ins and inner strip cover the whole {short} of the {relief.where}, so no "
        "counter-lining fits between them",
        "counter-lining-no-room",
        consequence="The clay wets one side of the board only, and the board warps",
        remedy="Write counter_lining: none, or model on a larger board",
        source="geometry",
    )


def _between_turn_ins(relief: Relief, side: str) -> Quantity:
    """The board inside, less the turn-ins; at the spine the inner strip lies instead of one."""
    book, panel = relief.book, relief.panel
    turn = book.default("turn-in")
    for _, result in relief.upstream.results:
        turn = next((q for q in result.quantities if q.name == "case.turn_in"), turn)
    whole, taken = panel.height, 2 * turn
    if side == "width":
        whole, taken = panel.width, turn + book.default("inner-strip-lap")
    return book.size(whole - taken).named(
        f"sculpt.counter_lining.{relief.on}.{side}",
        label=f"{side} of the counter-lining, {relief.on}",
        rule="the inside of the board between turn-ins and inner strip",
        source="common practice",
    )


def _masking(relief: Relief) -> tuple[Text, ...]:
    return (
        *mark_steps(relief),
        say("Mask the covering round the outline with film."),
        say("Clay that dries on cloth does not come out again."),
    )


def _key(
    relief: Relief, after: tuple[str, ...], masking: tuple[Text, ...]
) -> tuple[Operation, ...]:
    """What the clay grips on a covering: a whole cover cannot be sealed without spoiling it."""
    book, base = relief.book, relief.report.base_area
    if relief.options.key == "none":
        return ()
    gauze = relief.options.key == "gauze"
    rough = say("Roughen a smooth or coated covering inside the outline with sandpaper.")
    size = say("Brush white glue inside the outline only: cloth outside it would stain.")
    lay = say("Lay gauze into the wet glue, {area} of it, cut just inside the outline.", area=base)
    cloth = Use("Gauze or scrim", base, note=f"key on the {relief.where}")
    sized = glue(book, "pva", base, f"key on the {relief.where}")
    dry = dry_in_room(book, book.table("drying", "pva-joint", "next"))
    return (
        Operation(
            relief.op("key"),
            f"Give the clay a hold on the {relief.where}",
            (*masking, rough, size, *((lay,) if gauze else ())),
            book.practice("hand-set-up"),
            after=after,
            wait=dry,
            waiting="dry, open",
            cautions=cautions(book, "adhesives", "pva"),
            uses=(sized, cloth) if gauze else (sized,),
            wettings=_key_water(relief, base, dry),
            tools=("film", "masking tape", "sandpaper", "brush", "scissors"),
        ),
    )


def _key_water(relief: Relief, base: Quantity, dry: Quantity) -> tuple[Wetting, ...]:
    if relief.on == "spine":
        return ()
    return (wet(relief.book, "pva", base, f"board-{relief.on}", "outside", dry),)


def _finished_book(relief: Relief) -> Ground:
    book, wrap = relief.book, relief.op("wrap-block")
    operation = Operation(
        wrap,
        "Wrap the block",
        (
            say("Slip a sheet of film between cover and block, on both sides, up to the joints."),
            say("Wrap the block in film and tape it shut: edges, end-papers, ribbon and all."),
            say("Lay a board as thick as the block under the open cover, so that it lies level."),
            say("Keep wet work on the cover, away from the joint: water creeps along cloth."),
        ),
        book.practice("hand-set-up"),
        after=("case.press",),
        tools=("film", "masking tape", "a board as thick as the block"),
    )
    key = _key(relief, (wrap,), _masking(relief))
    after = tuple(one.id for one in key) or (wrap,)
    work = StageResult(operations=(operation, *key))
    return Ground(work, after, ("case.press",), marked=bool(key))
