"""Closures: what keeps the finished book shut, one thing a file."""
