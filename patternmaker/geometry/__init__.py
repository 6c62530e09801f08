"""Contours of lines and arcs: exact lengths, areas and parallels."""
