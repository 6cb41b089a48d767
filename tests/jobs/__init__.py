"""Tests of the commands and the queue."""
