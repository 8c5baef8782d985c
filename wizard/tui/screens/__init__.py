"""Screens of the application, one a file."""
