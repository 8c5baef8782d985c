"""The Textual application and the command line. They ask core and compute nothing themselves."""

__version__ = "0.1.0"
