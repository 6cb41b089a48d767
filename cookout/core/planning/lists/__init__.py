"""Lists that come from an event and its plan: shopping, packing, measuring out, the allergen card, leftovers."""

from cookout.core.planning.lists.leftovers import leftovers
from cookout.core.planning.lists.measuring import measure_out
from cookout.core.planning.lists.packing import packing
from cookout.core.planning.lists.shopping import shopping
from cookout.core.planning.lists.table_card import allergen_card

__all__ = ["allergen_card", "leftovers", "measure_out", "packing", "shopping"]
