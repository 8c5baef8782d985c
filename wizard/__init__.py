"""The Textual application and the command line. Asks core; computes nothing of its own."""

__version__ = "0.1.0"
