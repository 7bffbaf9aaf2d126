"""Rules: conditions that go wrong at the bench, one a file."""
