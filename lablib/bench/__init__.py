"""What happens on the machine: what holds the lens on its block, what turns it, and the margin between."""
