"""Moments for people, and dishes of the same recipe told apart."""

from datetime import UTC, datetime, timedelta

from django.utils import timezone

from cookout.web.reading.numbered import _names
from cookout.web.templatetags.plainly import ago, moment


def test_a_moment_is_told_in_the_time_zone_of_the_event() -> None:
    at = datetime(2027, 6, 12, 23, 5, tzinfo=UTC)
    assert moment(at, "America/Chicago") == "Sat 12 June 2027 18:05"  # UTC-5 in June


def test_what_was_done_within_the_minute_was_just_now() -> None:
    assert ago(timezone.now() - timedelta(seconds=20)) == "just now"
    assert ago(timezone.now() - timedelta(minutes=5, seconds=1)).replace("\xa0", " ") == "5 minutes ago"


def test_dishes_that_share_a_name_are_numbered_and_others_are_not() -> None:
    assert _names({"a": "Bread", "b": "Stew", "c": "Bread"}) == {"a": "Bread (1)", "b": "Stew", "c": "Bread (2)"}
