"""Keeps secrets that stand in addresses out of the logs.

Whoever has a helper's link can read that helper's part, so a log line with the link in it would give it away.
"""

import logging
import re
import sys
from typing import TextIO

UUID = r"[0-9a-f]{8}(?:-[0-9a-f]{4}){3}-[0-9a-f]{12}\b"
LONG_WORD = re.compile(rf"(?<=[/=])(?!{UUID})[A-Za-z0-9_:-]{{20,}}")


def without_secrets(line: str) -> str:
    """The line with every part of an address that is long enough to be a secret left out.

    An event's public id stays: it opens nothing to someone who is not signed in.
    """
    return LONG_WORD.sub("(left out)", line)


class ToStandardError(logging.StreamHandler[TextIO]):
    """Writes to whatever standard error is at that moment.

    The usual handler keeps the stream it began with, and tells of its own trouble with all that it was about to write.
    """

    @property
    def stream(self) -> TextIO:
        """Standard error."""
        return sys.stderr

    @stream.setter
    def stream(self, ignored: TextIO) -> None:
        """Takes no other stream."""

    def handleError(self, record: logging.LogRecord) -> None:  # noqa: N802 (the library's name)
        """Say that a line was lost, and not what was in it."""
        sys.stderr.write(f"a log line of {record.name} could not be written\n")


class LeaveOutSecrets(logging.Filter):
    """Rewrites what a record says, and its traceback, before any handler writes it."""

    def filter(self, record: logging.LogRecord) -> bool:
        """Always lets the record through, rewritten."""
        record.msg = without_secrets(record.getMessage())
        record.args = None
        if record.exc_info and not record.exc_text:
            record.exc_text = logging.Formatter().formatException(record.exc_info)
        if record.exc_text:
            record.exc_text = without_secrets(record.exc_text)
        return True
