"""One page on paper for whoever owns the vehicle: an HTML file that needs nothing else."""
