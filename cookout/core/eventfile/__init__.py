"""Event files: one TOML file holds one event. `schema` documents every table and key."""

from cookout.core.eventfile.reading import read_event
from cookout.core.eventfile.writing import write_event

__all__ = ["read_event", "write_event"]
