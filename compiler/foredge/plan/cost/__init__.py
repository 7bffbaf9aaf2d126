"""What the books cost and what the work earns."""
