"""Calendars (RFC 5545 and 7986) of a plan: one for the whole event, one for each helper.

They show a stored revision and compute no time of their own; the same revision gives the same bytes.
"""
