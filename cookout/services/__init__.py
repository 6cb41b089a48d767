"""Use cases: each loads, asks the core, and saves, in short transactions of its own."""
