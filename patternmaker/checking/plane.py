"""Points moved by the matrices of a page, and boxes; a point is a complex number."""

from __future__ import annotations

from typing import TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray

Points: TypeAlias = NDArray[np.complex128]
Distances: TypeAlias = NDArray[np.float64]
Matrix: TypeAlias = tuple[float, float, float, float, float, float]
Box: TypeAlias = tuple[float, float, float, float]
"""left, bottom, right, top"""

P = TypeVar("P", complex, Points)

UPRIGHT: Matrix = (1.0, 0.0, 0.0, 1.0, 0.0, 0.0)
MM = 25.4 / 72  # a unit of user space is 1/72 in: ISO 32000-1:2008, 8.3.2.3


def times(a: Matrix, b: Matrix) -> Matrix:
    """Return the matrix that does ``a``, then ``b`` (8.3.4)."""
    return (
        a[0] * b[0] + a[1] * b[2], a[0] * b[1] + a[1] * b[3],
        a[2] * b[0] + a[3] * b[2], a[2] * b[1] + a[3] * b[3],
        a[4] * b[0] + a[5] * b[2] + b[4], a[4] * b[1] + a[5] * b[3] + b[5],
    )  # fmt: skip


def moved(points: P, matrix: Matrix) -> P:
    """Return points as a matrix moves them."""
    a, b, c, d, e, f = matrix
    x, y = points.real, points.imag
    return a * x + c * y + e + 1j * (b * x + d * y + f)


def size_of(matrix: Matrix) -> float:
    """Return by how much a matrix makes things larger, both ways taken together."""
    return float(abs(matrix[0] * matrix[3] - matrix[1] * matrix[2]) ** 0.5)


def box_of(points: list[complex]) -> Box:
    """Return the box round points."""
    xs, ys = [p.real for p in points], [p.imag for p in points]
    return min(xs), min(ys), max(xs), max(ys)


def moved_box(box: Box, matrix: Matrix) -> Box:
    """Return the box round a box that was moved."""
    left, bottom, right, top = box
    corners = (complex(x, y) for x in (left, right) for y in (bottom, top))
    return box_of([moved(corner, matrix) for corner in corners])


def shared(one: Box | None, two: Box | None) -> Box | None:
    """Return what two boxes have in common; None is the whole plane."""
    if one is None or two is None:
        return one or two
    return max(one[0], two[0]), max(one[1], two[1]), min(one[2], two[2]), min(one[3], two[3])


def inside(points: Points, box: Box, by: float = 0.0) -> NDArray[np.bool_]:
    """Return which points lie in a box, or at most ``by`` outside it."""
    left, bottom, right, top = box
    x, y = points.real, points.imag
    return np.asarray(
        (x >= left - by) & (x <= right + by) & (y >= bottom - by) & (y <= top + by), np.bool_
    )
