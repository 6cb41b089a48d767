"""From an event to a checked plan: expand, solve, check, explain."""
