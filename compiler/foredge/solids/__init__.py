"""The solid library behind one small face: figures and outlines of a relief."""
