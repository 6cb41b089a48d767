"""Recipes out of pages that do not carry them as JSON-LD; what does is read by `core.kitchen.interchange` alone."""
