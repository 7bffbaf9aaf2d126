"""The parts of the bench page: its words, its numbers, its drawings, its templates."""
