"""What is kept: people, events, plan revisions, runs and links."""
