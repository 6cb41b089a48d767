"""Readers of what stands on the command line."""

from argparse import ArgumentTypeError
from collections.abc import Callable
from typing import Any


def within(least: float, most: float, read: Callable[[str], Any]) -> Callable[[str], Any]:
    """A reader of numbers from `least` to `most`, for the command line."""

    def number(text: str) -> Any:
        try:
            value = read(text)
        except ValueError:
            value = None
        if value is None or not least <= value <= most:
            raise ArgumentTypeError(f"{text!r} is not from {least:g} to {most:g}")
        return value

    return number
