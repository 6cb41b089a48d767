"""Coals, ovens and weather."""
