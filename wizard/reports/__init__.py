"""What the command line prints. Nothing here loads the screens."""
