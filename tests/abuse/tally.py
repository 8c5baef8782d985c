"""Tally of one kind of abuse: what was tried, and what went wrong."""

from dataclasses import dataclass, field


@dataclass
class Tally:
    """Count of trials, and a line for each fault.

    Attributes
    ----------
    tried : int
    faults : list of str
    """

    tried: int = 0
    faults: list[str] = field(default_factory=list)

    def expect(self, is_true: bool, fault: str) -> None:
        """Note a fault unless a condition is true."""
        if not is_true:
            self.faults.append(fault)
