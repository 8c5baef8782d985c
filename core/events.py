"""What the driver meets on the road: a dip, a hard stop with nose dive."""

from dataclasses import dataclass


@dataclass(frozen=True)
class Event:
    """A passage of suspension travel on the road.

    The axle heaves by `travel` along a raised cosine in `rise` seconds, stays for `hold`
    seconds, and goes back along the same curve where the event `returns`.

    Attributes
    ----------
    name : str
    rise, hold : float
        s
    returns : bool
    travel : float
        Heave at the top of the event, mm; positive is bump (a nose that dives).
    speed : float
        Speed at the start, mm/s.
    deceleration : float
        mm/s2; the speed does not go below 0.
    """

    name: str
    rise: float
    hold: float
    returns: bool
    travel: float
    speed: float
    deceleration: float
