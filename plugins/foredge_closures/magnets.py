"""``magnets``: sunk into the front board, and a flap from the back one that they hold."""

from __future__ import annotations

from typing import Annotated, Literal

from msgspec import Meta

from foredge.contract import (
    RATIO,
    ClosureJob,
    ClosureResult,
    Length,
    Operation,
    PartOptions,
    Quantity,
    StageResult,
    Text,
    Use,
    cited,
    number,
    opaque,
    say,
    stock_name,
    stuff_of,
)
from foredge_closures import bench
from foredge_closures.anchor import Anchored, anchored, from_fore_edge
from foredge_closures.magnet_pocket import (
    POCKET,
    before_covering,
    pocket_problems,
    poles,
    share_of_pull,
)
from foredge_closures.seen import over_fore_edge
from foredge_closures.sheet import Mark, board_sheet, off_board


class MagnetsOptions(PartOptions, frozen=True, kw_only=True, tag="magnets"):
    """Options of ``use: magnets``. They lie beside any relief, not under it."""

    diameter: Annotated[Length, Meta(description="Of one round magnet.")]
    thickness: Annotated[Length, Meta(description="Of one magnet.")]
    count: Annotated[Literal[1, 2], Meta(description="One flap and magnet, or two.")] = 1
    keeper: Annotated[
        Literal["steel", "magnet"], Meta(description="What the flap holds against them.")
    ] = "steel"
    marked: (
        Annotated[
            bool,
            Meta(
                description="true: the poles of the magnets are marked already. false: they are "
                "not, and will not be. Left out: they are marked before they are sunk."
            ),
        ]
        | None
    ) = None
    cap: Annotated[Length, Meta(description="Paper and glue over the magnet.")] | None = None
    web: Annotated[Length, Meta(description="Board left under the pocket.")] | None = None
    flap: (
        Annotated[str, stock_name("tape", "cloth"), Meta(description="What the flap is of.")] | None
    ) = None
    width: Annotated[Length, Meta(description="Width of the flap.")] | None = None
    magnet_from_fore_edge: Annotated[Length, Meta(description="Its middle.")] | None = None
    from_fore_edge: Annotated[Length, Meta(description="The flap's slit.")] | None = None


class Magnets:
    """Round magnets and a flap."""

    kind = "closure"
    name = "magnets"
    title = "Magnets under a flap"
    options = MagnetsOptions

    def fasten(self, job: ClosureJob) -> ClosureResult:
        """Pocket, what the board keeps, what the pull keeps, and the flap's length."""
        said, book = job.part.options, job.book
        strip = bench.strip_of(job, said.flap, said.width, "sewing-tape")
        cap = bench.decided(job, said.cap, "magnet-cap")
        deep = bench.named("pocket", said.thickness + cap, "depth of the pocket",
                           "the magnet, and the paper and glue over it", "geometry")  # fmt: skip
        at = bench.decided(job, said.magnet_from_fore_edge, "magnet-edge")
        edge = from_fore_edge(job, said.from_fore_edge)
        thick = bench.in_use(job, over_relief=False)
        fitted = bench.named("length", edge + thick + at + 3 * said.diameter, "flap, from its slit",
                             "round the fore-edge, a little past the magnet, and back over it",
                             "geometry")  # fmt: skip
        places = [job.board_height * n / (said.count + 1) for n in range(1, said.count + 1)]
        flap = anchored(job, strip, fitted, edge, "Flap", places)
        front = [Mark("pocket", at, head, said.diameter, said.diameter) for head in places]
        set_it = bench.set_closure(job, "Set the flap", _set(flap), (flap.piece,), area=flap.area,
                                   after=(POCKET,))  # fmt: skip
        bought = _bought(said)
        work = StageResult(
            quantities=(deep, _pull(job, cap, strip), thick, *flap.quantities),
            pieces=(flap.piece,),
            uses=bought,
            operations=(
                bench.with_bought(before_covering(job, deep, at, front), *bought),
                set_it,
                _fit(job, job.book.size(fitted)),
            ),
            drawings=(
                board_sheet(job, "front", "outside", front),
                board_sheet(job, "back", "inside", flap.marks),
            ),
            problems=(
                *pocket_problems(job, deep, bench.decided(job, said.web, "magnet-floor")),
                *flap.problems,
                *off_board(job, front),
            ),
            looks=over_fore_edge(
                job,
                stuff_of(book, strip.stock, "sewing-tape", "cloth"),
                at + 1.5 * said.diameter,
                strip.width.value,
                [place.value for place in places],
            ),
        )
        return ClosureResult(work, 2 * strip.thickness + book.default("magnet-keeper"), bench.FIT)


def _pull(job: ClosureJob, cap: Quantity, strip: bench.Strip) -> Quantity:
    halving = job.book.practice("magnet-pull-halving")
    left = opaque(share_of_pull, (cap + job.covering + strip.thickness, halving), RATIO)
    rule = "cap, covering and flap lie between; each such thickness halves it"
    return bench.named("pull", left, "pull left of that in bare contact", rule, cited(halving))


def _set(flap: Anchored) -> tuple[Text, ...]:
    return (
        say("Cut {count} of the flap, {width} by {length}: longer than it will be.",
            count=flap.piece.count, width=flap.piece.width, length=flap.piece.height),
        say("Mark the template on the inside of the back board."),
        *flap.steps,
    )  # fmt: skip


def _bought(said: MagnetsOptions) -> tuple[Use, ...]:
    pair = said.keeper == "magnet"
    found = [Use("round magnet", number(said.count * (2 if pair else 1)))]
    if not pair:
        found.append(Use("steel disc", number(said.count)))
    return tuple(found)


def _fit(job: ClosureJob, fitted: Quantity) -> Operation:
    steps: tuple[Text, ...] = (
        *poles(job.part.options),
        say("Lead the flap round the fore-edge; let the keeper find the magnet through it."),
        say("Mark it; fold the end back over the keeper, and cut it {length} from the slit.",
            length=fitted),
        say("Glue the layers together with the keeper between them."),
        say("Clamp it, apart from the magnet, until it is dry. Then try it."),
    )  # fmt: skip
    return bench.fit_closure(job, "Fit the flap", steps, hazards=("magnets", "small-parts"))


PLUGIN = Magnets()
