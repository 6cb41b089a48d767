"""An independent reading for barriers on every page that there is, light and dark (axe-core, WCAG 2.2 A and AA)."""

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from django.urls import reverse
from playwright.sync_api import Browser
from pytest_django.live_server_helper import LiveServer

from cookout.core.planning.result import Limits
from cookout.services import plan, trials
from cookout.store.models import Event
from cookout.web.urls import urlpatterns
from tests.store.cast import HELPER, Cast, the_cast

pytestmark = [pytest.mark.browser, pytest.mark.django_db(transaction=True)]

RULES = {"runOnly": ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}
NOT_PAGES = {"demo-enter", "sign-out", "feed"}


@pytest.fixture
def cast() -> Cast:
    """The cast, with a real plan and a trial beside it."""
    cast = the_cast()
    limits = Limits(seconds=10, workers=2, seed=1)
    plan.run_planning(run_id=plan.queue_planning(event_id=cast.event.pk, limits=limits, announce=False).pk)
    change: dict[str, str | int] = {"kind": "move_servings", "minutes": -15}
    run = trials.try_change(event_id=cast.event.pk, user_id=cast.owner.pk, change=change, words="15 min earlier")
    plan.run_planning(run_id=run.pk)
    cast.event.refresh_from_db()
    return cast


def known(cast: Cast) -> dict[str, object]:
    """A value for each part of an address."""
    event: Event = cast.event
    assert event.current is not None
    return {
        "event": event.public_id,
        "number": event.current.number,
        "run": event.runs.first().pk,  # type: ignore[union-attr]
        "helper": HELPER,
        "task": event.current.payload["tasks"][0]["id"],
        "token": cast.helper_token,
        "name": "shopping",
        "kind": "run-sheet",
        "topic": "words",
    }


def addresses(cast: Cast) -> list[str]:
    """Every address whose parts are known, whether or not it answers a GET with a page."""
    values = known(cast)
    found = []
    for pattern in urlpatterns:
        parts = list(pattern.pattern.converters)
        if pattern.name not in NOT_PAGES and all(part in values for part in parts):
            found.append(reverse(str(pattern.name), kwargs={part: values[part] for part in parts}))
    return found


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.timeout(600)
def test_no_page_has_a_barrier(browser: Browser, live_server: LiveServer, cast: Cast, scheme: str) -> None:
    from django.test import Client

    probe = Client()
    probe.force_login(cast.owner)
    pages = []
    for address in addresses(cast):
        answer = probe.get(address)
        if answer.status_code == 200 and answer.headers["Content-Type"].startswith("text/html"):
            pages.append(address)
    barriers = []
    with browser.new_context(base_url=live_server.url, color_scheme="dark" if scheme == "dark" else "light") as context:
        session = probe.cookies["sessionid"].value
        context.add_cookies([{"name": "sessionid", "value": session, "url": live_server.url}])
        page = context.new_page()
        for address in pages:
            page.goto(address)
            found = Axe().run(page, options=RULES)
            if found.violations_count:
                barriers.append(f"{address}: {found.generate_report()}")
        context.clear_cookies()
        for address in [reverse("sign-in"), "/nothing-here/"]:
            page.goto(address)
            found = Axe().run(page, options=RULES)
            if found.violations_count:
                barriers.append(f"{address}: {found.generate_report()}")
    assert barriers == []
    assert len(pages) >= 25
