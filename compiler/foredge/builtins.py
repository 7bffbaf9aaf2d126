"""The plugins that come with Foredge: names of their modules, one a line, sorted.

Each module has a ``PLUGIN`` (or ``PLUGINS``). They are imported when the registry is made.
"""

BUILTINS: tuple[str, ...] = (
    "foredge_boards.bought",
    "foredge_boards.laminated",
    "foredge_casing_in.at_once",
    "foredge_casing_in.hinge_first",
    "foredge_coverings.full_cloth",
    "foredge_coverings.quarter_cloth",
    "foredge_end_papers.cloth_jointed",
    "foredge_end_papers.sewn",
    "foredge_end_papers.tipped",
    "foredge_lettering.lettering",
    "foredge_sewings.link_stitch",
    "foredge_sewings.tapes",
    "foredge_spines.board",
    "foredge_spines.card",
    "foredge_spines.none",
    "foredge_stages.case",
    "foredge_stages.text_block",
)
