"""``templates-a4.pdf`` or ``templates-letter.pdf``: every drawing, ready to print."""

from __future__ import annotations

from foredge.contract import Build
from foredge.drawing.contents import contents
from foredge.drawing.imposition import pictures, subject, templates
from foredge.drawing.page_frame import framed
from foredge.drawing.paper import PAPERS, Paper
from foredge.drawing.pdf import to_pdf
from foredge.drawing.sheets import Page
from foredge.emit.plan_drawings import all_drawings
from foredge.emit.svg import provisional


class Templates:
    """The templates at true scale, tiled where they are larger than a page, then pictures."""

    kind = "emitter"
    name = "templates"
    title = "Templates to print, in PDF"

    def emit(self, build: Build) -> dict[str, bytes]:
        """One file, for the paper that the book is printed on; none without drawings."""
        paper = PAPERS[build.book.print_on]
        pages = template_pages(build, paper)
        if not pages:
            return {}
        title = f"{build.book.title}: templates"
        return {f"templates-{paper.name}.pdf": to_pdf(pages, title)}


def template_pages(build: Build, paper: Paper) -> tuple[Page, ...]:
    """The pages: contents, templates, pictures."""
    subjects = [subject(one, provisional(one)) for one in all_drawings(build)]
    if not subjects:
        return ()
    true = templates([one for one in subjects if one.drawing.true_scale], paper)
    seen = pictures([one for one in subjects if not one.drawing.true_scale], paper)
    sheets = [*contents(build.book.title, paper, true, seen), *true.sheets, *seen.sheets]
    return tuple(
        framed(sheet, paper, build.book.title, number, len(sheets))
        for number, sheet in enumerate(sheets, start=1)
    )
