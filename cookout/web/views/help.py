"""Help: a first event, how planning works, the words of the trade, cautions. For everybody, signed in or not."""

from django.http import Http404, HttpRequest, HttpResponse
from django.shortcuts import render
from django.views.decorators.http import require_GET

from cookout.web.reading.help import STANDINGS, TOPICS, centres, facts, topic_of, word_groups, word_index
from cookout.web.reading.status import AIMS, HEADLINES


@require_GET
def index(request: HttpRequest) -> HttpResponse:
    """The topics, and every word with a link to its meaning."""
    return render(request, "cookout/help.html", {"topics": TOPICS, "words": word_index()})


@require_GET
def topic(request: HttpRequest, topic: str) -> HttpResponse:
    """One topic."""
    found = topic_of(topic)
    if found is None:
        raise Http404("no such topic")
    page = {"topics": TOPICS, "topic": found, "facts": facts(), **_content(found.name)}
    return render(request, f"cookout/help_{found.name.replace('-', '_')}.html", page)


def _content(name: str) -> dict[str, object]:
    """What the template of a topic needs beyond the numbers."""
    if name == "words":
        return {"groups": word_groups()}
    if name == "planning":
        return {"aims": AIMS.values(), "standings": [(HEADLINES[status], STANDINGS[status]) for status in HEADLINES]}
    return {"centres": list(centres())} if name == "cautions" else {}
