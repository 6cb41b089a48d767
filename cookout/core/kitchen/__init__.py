"""Recipes: what is made, in which steps, with how many hands."""
