"""Derivatives by complex steps, and Newton's method for many small systems at once."""

from collections.abc import Callable

import numpy as np

from tests.full_axle.rotations import Array

STEP = 1e-30
"""Imaginary step. Nothing is subtracted, so the derivative is exact to the last bits."""

MOST_STEPS = 60
SETTLED = 1e-10
"""Change of the unknowns, mm or rad, after which an equilibrium counts as reached."""

Function = Callable[[Array], Array]


def with_jacobian(function: Function, unknown: Array) -> tuple[Array, Array]:
    """Values (..., m) of a function at unknowns (..., n), with derivatives (..., m, n)."""
    count = unknown.shape[-1]
    stepped = unknown[..., None, :] + 1j * STEP * np.eye(count)
    values = [function(stepped[..., i, :]) for i in range(count)]
    derivatives = np.stack([value.imag / STEP for value in values], axis=-1)
    return values[0].real, derivatives


def least_energy(deflections: Function, constraint: Function, start: Array) -> Array:
    """Unknowns (..., n) of least sum of squared deflections at which the constraints are zero.

    Each step solves the conditions of Lagrange with the squared Jacobian for second derivatives
    (Gauss-Newton; Nocedal and Wright, Numerical Optimization, 10.3 and 18.1).
    """
    unknown = start
    n = start.shape[-1]
    for _ in range(MOST_STEPS):
        deflection, by_unknown = with_jacobian(deflections, unknown)
        gap, normal = with_jacobian(constraint, unknown)
        m = gap.shape[-1]
        system = np.zeros((*unknown.shape[:-1], n + m, n + m))
        transposed = np.swapaxes(by_unknown, -1, -2)
        system[..., :n, :n] = transposed @ by_unknown
        system[..., n:, :n] = normal
        system[..., :n, n:] = np.swapaxes(normal, -1, -2)
        force = (transposed @ deflection[..., None])[..., 0]
        right = -np.concatenate([force, gap], axis=-1)
        step = np.linalg.solve(system, right[..., None])[..., :n, 0]
        unknown = unknown + step
        if np.abs(step).max() < SETTLED:
            return unknown
    raise AssertionError("no equilibrium was reached")


def root(function: Function, start: Array) -> Array:
    """Unknowns (..., n) at which n functions are zero."""
    unknown = start
    for _ in range(MOST_STEPS):
        value, jacobian = with_jacobian(function, unknown)
        step = np.linalg.solve(jacobian, -value[..., None])[..., 0]
        unknown = unknown + step
        if np.abs(step).max() < SETTLED:
            return unknown
    raise AssertionError("a link does not reach")
