"""Reading. One file a subject; nothing here writes."""
