"""Ids made from names, so that nobody is asked for one."""

from collections.abc import Collection

from django.utils.text import slugify

LONGEST = 48


def id_for(name: str, taken: Collection[str], fallback: str) -> str:
    """An id that nothing bears yet: the name in small letters, with a number behind it where it is taken.

    Example: "Ivo Sandoval" is ``ivo-sandoval``; a second one is ``ivo-sandoval-2``.
    """
    stem = slugify(name)[:LONGEST].strip("-_") or fallback
    found, number = stem, 1
    while found in taken:
        number += 1
        found = f"{stem}-{number}"
    return found
