"""Decimals with a point, as the amounts of a plan have them."""

DECIMAL_SEPARATOR = "."
THOUSAND_SEPARATOR = ","
