"""Edge treatments: what is done to the edges of the block, one a file."""
