"""End-papers: what joins block and case inside."""
