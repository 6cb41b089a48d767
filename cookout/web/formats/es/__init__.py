"""Spanish of the Americas."""
