"""Lettering: text set to fit, traced at full size, and painted."""
