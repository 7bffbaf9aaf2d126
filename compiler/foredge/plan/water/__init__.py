"""Water brought to the book, and the pulls on its boards."""
