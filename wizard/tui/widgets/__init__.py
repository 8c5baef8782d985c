"""Widgets of the screens, one a file; evenarc.tcss holds their styles."""
