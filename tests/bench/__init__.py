"""Measurements against published instances and made-up events; run by hand, see each module."""
