"""The stage ``text-block``."""

from foredge_stages.text_block.stage import TextBlock

PLUGIN = TextBlock()
