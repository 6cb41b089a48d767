"""Errors of the feeds.

    CookoutError
      FeedError      a calendar that cannot be written as asked

The message says what to give instead.
"""

from cookout.core.errors import CookoutError


class FeedError(CookoutError):
    """A calendar that cannot be written as asked; the message says what to give instead."""
