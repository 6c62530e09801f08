"""Contours read from drawings: SVG, DXF and lists of points."""
