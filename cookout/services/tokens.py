"""Tokens of links: words that nobody guesses, of which only a hash is stored."""

import secrets
from hashlib import sha256

TOKEN_BYTES = 32


def fresh_token() -> str:
    """A new one, fit to stand in an address."""
    return secrets.token_urlsafe(TOKEN_BYTES)


def hash_of(token: str) -> str:
    """What is stored of it, and looked up by: so timing tells nothing of stored tokens."""
    return sha256(token.encode()).hexdigest()
