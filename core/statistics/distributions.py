"""The normal and the chi-square distribution in closed form.

The tests check them against scipy.stats.
"""

from functools import cache
from math import erfc, exp, gamma, log, pi, sqrt
from statistics import NormalDist

_FAR_OUT = 60.0
"""Chi-square beyond which the first term of the normal tail is good to a thousandth."""


def normal_cdf(z: float) -> float:
    """Probability that a standard normal variable is at most z."""
    return erfc(-z / sqrt(2)) / 2


def chi_square_sf(x: float, degrees: int) -> float:
    """Probability that chi-square with some degrees of freedom exceeds x.

    Q(x; 1) = erfc(sqrt(x/2)), Q(x; 2) = exp(-x/2), and
    Q(x; k + 2) = Q(x; k) + (x/2)^(k/2) exp(-x/2) / Gamma(k/2 + 1).
    """
    half = x / 2
    start = 2 - degrees % 2
    tail = exp(-half) if start == 2 else erfc(sqrt(half))
    for k in range(start, degrees, 2):
        tail += half ** (k / 2) * exp(-half) / gamma(k / 2 + 1)
    return tail


@cache
def chi_square_limit(degrees: int, risk: float = 0.001) -> float:
    """Value that chi-square exceeds with probability `risk`; 0 for 0 degrees of freedom."""
    if degrees == 0:
        return 0.0
    low, high = 0.0, 1.0
    while chi_square_sf(high, degrees) > risk:
        high *= 2
    # The tail falls steadily, so halving the interval ends at the last bit.
    while low < (middle := (low + high) / 2) < high:
        low, high = (middle, high) if chi_square_sf(middle, degrees) > risk else (low, middle)
    return high


def two_sided_normal(square: float) -> float:
    """Normal value that is exceeded to either side as rarely as chi-square of 2 exceeds `square`.

    That is 2 (1 - Phi(z)) = exp(-square / 2).
    """
    if square < _FAR_OUT:
        return -NormalDist().inv_cdf(exp(-square / 2) / 2) if square > 0 else 0.0
    z = sqrt(square)
    for _ in range(4):  # the first term of the tail: 2 (1 - Phi(z)) = sqrt(2/pi) exp(-z^2/2) / z
        z = sqrt(square - 2 * log(z) - log(pi / 2))
    return z
