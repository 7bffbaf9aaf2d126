"""One Protocol a kind. A plugin is one small object with a name, options and one job.

A plugin must be pure: same job, same result; no clock, no files, no randomness without a
seed from its options. It reports what is wrong as problems in its result; an exception is
a bug and stops the build with the plugin's name.
"""

from __future__ import annotations

from typing import Any, Protocol

from foredge.contract.book import Book
from foredge.contract.jobs import (
    BoardsJob,
    BoardsResult,
    CasingInJob,
    CoverJob,
    CoverResult,
    EdgeJob,
    EndPaperJob,
    EndPaperResult,
    SewingJob,
    SewingResult,
    SpineJob,
    SpineResult,
)
from foredge.contract.measures import Part
from foredge.contract.options import Options, PartOptions
from foredge.contract.work import StageResult, Upstream
from foredge.quantity import Quantity


class Plugin(Protocol):
    """What every plugin has.

    ``kind`` is the slot it fills, ``name`` what spec authors write after ``use`` (the
    options' tag), ``title`` what the sheet calls it.
    """

    @property
    def kind(self) -> str: ...
    @property
    def name(self) -> str: ...
    @property
    def title(self) -> str: ...


class PartPlugin(Plugin, Protocol):
    """A plugin chosen by ``use`` in a spec."""

    @property
    def options(self) -> type[PartOptions]: ...


class Stage(Plugin, Protocol):
    """A stage of the pipeline; its kind is ``stage``.

    ``section`` is its top-level key in the spec, ``needs`` the stages whose results it
    reads, ``prefix`` what the names of its quantities and pieces start with.
    """

    @property
    def options(self) -> type[Options]: ...
    @property
    def section(self) -> str: ...
    @property
    def prefix(self) -> str: ...
    @property
    def needs(self) -> tuple[str, ...]: ...

    def run(self, book: Book, upstream: Upstream) -> StageResult:
        """Everything this stage knows about the book."""
        ...


class Sewing(PartPlugin, Protocol):
    """How gatherings become a block; kind ``sewing``."""

    def sew(self, job: SewingJob) -> SewingResult:
        """Stations, thread and operations."""
        ...


class EndPapers(PartPlugin, Protocol):
    """What joins block and case inside; kind ``end-papers``."""

    def make(self, job: EndPaperJob) -> EndPaperResult:
        """Pieces, thickness, hinge and operations."""
        ...


class Edge(PartPlugin, Protocol):
    """A treatment of the block's edges; kind ``edge``."""

    def treat(self, job: EdgeJob) -> StageResult:
        """Operations between trimming and gate G2."""
        ...


class Boards(PartPlugin, Protocol):
    """What the boards are made of; kind ``boards``."""

    def thickness(self, book: Book, part: Part[Any]) -> Quantity:
        """The finished board's thickness, as estimated from what it is made of."""
        ...

    def make(self, job: BoardsJob) -> BoardsResult:
        """Pieces and operations up to the board that is measured."""
        ...


class Spine(PartPlugin, Protocol):
    """What stiffens the case's spine, if anything; kind ``spine``."""

    def plan(self, job: SpineJob) -> SpineResult:
        """Width of the spine piece and of the joint beside it."""
        ...


class Covering(PartPlugin, Protocol):
    """What the case is covered with; kind ``covering``."""

    def in_joint(self, book: Book, part: Part[Any]) -> Quantity:
        """Thickness of the covering (backing included) that lies in the joint."""
        ...

    def cover(self, job: CoverJob) -> CoverResult:
        """Pieces, and the operations of making up the case."""
        ...


class CasingIn(PartPlugin, Protocol):
    """How the block is joined to its case; kind ``casing-in``."""

    def join(self, job: CasingInJob) -> StageResult:
        """Operations up to the bound book."""
        ...
