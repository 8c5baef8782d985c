"""One widget a file; how they look stands in evenarc.tcss."""
