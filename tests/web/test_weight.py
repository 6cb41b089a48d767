"""How heavy the pages of a large event are: look-ups counted, bytes of the first load weighed.

The event is the festival: 402 tasks, 30 helpers. Milliseconds are measured in `tests.bench.pages`.
"""

import gzip
import re
from collections.abc import Iterator

import pytest
from django.contrib.staticfiles import finders
from django.test import Client
from django.urls import reverse
from pytest_django import DjangoAssertNumQueries

from cookout.core.planning.result import Limits
from cookout.services import events, plan
from cookout.store.models import Event
from cookout.web.urls import urlpatterns
from tests.store.cast import OWNER, a_user, example_text

MOST_QUERIES = 25
MOST_BYTES, MOST_COMPRESSED = 400_000, 150_000
ASSET = re.compile(r'(?:href|src)="(/static/[^"]+)"')

EVENT_PAGES = sorted(str(pattern.name) for pattern in urlpatterns if list(pattern.pattern.converters) == ["event"])


@pytest.fixture
def festival(db: None) -> Event:
    owner = a_user(OWNER)
    event = events.create_event(owner_id=owner.pk, document=example_text("festival"), file_name="festival.toml")
    limits = Limits(seconds=1.5, workers=2, seed=1)
    plan.run_planning(run_id=plan.queue_planning(event_id=event.pk, limits=limits, announce=False).pk)
    event.refresh_from_db()
    assert event.current is not None
    return event


def assets_of(page: bytes) -> Iterator[bytes]:
    """The styles, scripts and pictures that come with a page's first load."""
    for address in dict.fromkeys(ASSET.findall(page.decode())):
        path = finders.find(re.split(r"[?#]", address.removeprefix("/static/"))[0])
        assert isinstance(path, str), f"{address} is not served"
        with open(path, "rb") as file:  # noqa: PTH123
            yield file.read()


def test_every_page_of_a_large_event_is_light_and_asks_little_of_the_database(
    festival: Event, django_assert_max_num_queries: DjangoAssertNumQueries
) -> None:
    client = Client()
    client.force_login(festival.owner)
    heavy, seen = [], []
    for name in EVENT_PAGES:
        with django_assert_max_num_queries(MOST_QUERIES):
            answer = client.get(reverse(name, args=[festival.public_id]))
        if answer.status_code != 200 or not answer.headers["Content-Type"].startswith("text/html"):
            continue
        seen.append(name)
        parts = [answer.content, *assets_of(answer.content)]
        whole, packed = sum(map(len, parts)), sum(len(gzip.compress(part, 6)) for part in parts)
        if whole >= MOST_BYTES or packed >= MOST_COMPRESSED:
            heavy.append((name, whole, packed))
    assert heavy == []
    assert {"event", "run-sheet", "fire", "helpers", "trials", "revisions", "timeline", "lists", "paper"} <= set(seen)


def test_pages_come_compressed_where_the_browser_can_read_that(festival: Event) -> None:
    client = Client()
    client.force_login(festival.owner)
    answer = client.get(reverse("event", args=[festival.public_id]), headers={"Accept-Encoding": "gzip"})
    assert answer.headers["Content-Encoding"] == "gzip"
    assert len(answer.content) < MOST_COMPRESSED
