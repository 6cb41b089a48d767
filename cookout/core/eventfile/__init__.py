"""Event files: one TOML file holds one event, or one recipe. `schema` documents every table and key."""

from cookout.core.eventfile.reading import read_event
from cookout.core.eventfile.recipefile import read_recipe, write_recipe_file
from cookout.core.eventfile.writing import write_event

__all__ = ["read_event", "read_recipe", "write_event", "write_recipe_file"]
