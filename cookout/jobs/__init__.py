"""Work outside of a page: the queue's tasks, and the commands."""
