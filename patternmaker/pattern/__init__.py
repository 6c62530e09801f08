"""Pieces, their edges and marks, the seams between them, and how they fit the seat."""
