"""Reads points from heat maps, plainly: the reference that the Java reader of the product is checked against."""
from __future__ import annotations

import numpy as np

REACH_CELLS = 4  # a mode's window reaches this many cells to every side of its peak
MIN_SD_PX = 1.0


def read_points(logits: np.ndarray, cell_px: float) -> np.ndarray:
    """(points, rows, columns) logits -> (points, 8): x, y, sd, mass of the highest mode, then of the second one.

    x, y and sd in px of the input picture, (0, 0) = outer corner of its first pixel; mass = the window's share of the soft-max. The networks
    were taught a posterior blurred by one cell, which is taken off: sd^2 = mean of the variances of x and y - cell^2, at least 1 px^2.
    The second mode's window leaves out the cells of the first one's.
    """
    points = np.full((len(logits), 8), np.nan)
    for row, heat in zip(points, logits.astype(np.float64)):
        share = np.exp(heat - heat.max())
        share /= share.sum()
        for first in (0, 4):
            window = _window(share)
            row[first : first + 4] = _describe(share, window, cell_px)
            share = np.where(window, 0.0, share)
    return points


def _window(share: np.ndarray) -> np.ndarray:
    peak_row, peak_column = np.unravel_index(share.argmax(), share.shape)
    rows, columns = np.indices(share.shape)
    return (abs(rows - peak_row) <= REACH_CELLS) & (abs(columns - peak_column) <= REACH_CELLS)


def _describe(share: np.ndarray, window: np.ndarray, cell_px: float):
    weights = share[window]
    mass = weights.sum()
    rows, columns = np.indices(share.shape)
    x, y = (columns[window] + 0.5) * cell_px, (rows[window] + 0.5) * cell_px
    mean_x, mean_y = (weights * x).sum() / mass, (weights * y).sum() / mass
    variance = (weights * ((x - mean_x) ** 2 + (y - mean_y) ** 2)).sum() / mass / 2 - cell_px**2
    return mean_x, mean_y, np.sqrt(max(variance, MIN_SD_PX**2)), mass
