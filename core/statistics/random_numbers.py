"""Random numbers for Monte Carlo, the same on every machine for the same seed.

They come from the Mersenne Twister of the standard library, whose bytes stay the same from one
version to the next. NumPy does not promise that of its generators (NEP 19).
"""

from random import Random

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]


def uniform(count: int, seed: int) -> Array:
    """Uniform random numbers in (0, 1], array (count,)."""
    whole = np.frombuffer(Random(seed).randbytes(8 * count), dtype="<u8") >> np.uint64(11)
    return np.asarray((whole + 1.0) * 2.0**-53)


def standard_normal(shape: tuple[int, int], seed: int) -> Array:
    """Standard normal random numbers, by the transform of G. E. P. Box and M. E. Muller (1958).

    Parameters
    ----------
    shape : (int, int)
    seed : int

    Returns
    -------
    array of this shape
    """
    pairs = -(-shape[0] * shape[1] // 2)
    first, second = uniform(2 * pairs, seed).reshape(2, pairs)
    radius, turn = np.sqrt(-2 * np.log(first)), 2 * np.pi * second
    drawn = np.concatenate([radius * np.cos(turn), radius * np.sin(turn)])
    return np.asarray(drawn[: shape[0] * shape[1]].reshape(shape))
