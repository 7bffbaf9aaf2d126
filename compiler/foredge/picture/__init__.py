"""The picture of the finished book, painted from what stages and parts say is seen of it."""
