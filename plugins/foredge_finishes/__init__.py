"""Finishes: coats that go over the finished book, one a file."""
