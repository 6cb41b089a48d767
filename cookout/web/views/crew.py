"""The crew: helpers with their skills and hours."""

from uuid import UUID

from django.http import HttpRequest, HttpResponse
from django.shortcuts import render
from django.utils.translation import gettext as _
from django.views.decorators.http import require_http_methods

from cookout.core.planning.event import HelperId
from cookout.services import crew
from cookout.services.editing import Changed
from cookout.store.selectors.events import Event, event_of
from cookout.store.selectors.keeping import list_people
from cookout.web import answers
from cookout.web.forms.crew import FromBookForm, HelperForm
from cookout.web.guards import signed_in, user_id_of
from cookout.web.reading.crew import crew_page
from cookout.web.views.pressing import Outcome, Shown, page_of_forms, save_form, tell_saved


@require_http_methods(["GET", "POST"])
@signed_in
def show(request: HttpRequest, event: UUID) -> HttpResponse:
    """The crew, and every button on its page."""
    return page_of_forms(request, event, ACTIONS, _page, "event-crew")


def _page(request: HttpRequest, event: Event, sent: Shown = None, *, status: int = 200) -> HttpResponse:
    core = event_of(event)
    page = crew_page(core, sent if isinstance(sent, HelperForm) else None)
    book = sent if isinstance(sent, FromBookForm) else FromBookForm(core, _people(request))
    people = book.fields["people"].choices  # type: ignore[attr-defined]
    page.update(event=event, tab="crew", book=book, has_people=bool(people))
    return render(request, "cookout/event_crew.html", page, status=status)


def _people(request: HttpRequest) -> list[tuple[str, str]]:
    return [(str(each.public_id), each.name) for each in list_people(owner_id=user_id_of(request))]


def _save(request: HttpRequest, event: Event) -> Outcome:
    core = event_of(event)
    form = HelperForm(core, ("crew", request.POST.get("thing", "")), request.POST)
    if not form.is_valid():
        return form
    name = form.cleaned_data["name"]
    helper_id = form.part[1] or crew.helper_id_for(core, name)
    helper = form.helper(HelperId(helper_id))
    words = (_("%(helper)s added to the crew") if form.is_new else _("%(helper)s changed")) % {"helper": name}
    change = Changed(("crew", helper_id), helper, was=form.was_given)
    return save_form(request, event, form, [change], words, done=f"crew-{helper_id}")


def _remove(request: HttpRequest, event: Event) -> Outcome:
    helper = request.POST.get("thing", "")
    tell_saved(request, event, crew.remove_helper(event_id=event.pk, user_id=user_id_of(request), helper_id=helper))
    return ""


def _add_people(request: HttpRequest, event: Event) -> Outcome:
    form = FromBookForm(event_of(event), _people(request), request.POST)
    if not form.is_valid():
        return form
    given = form.cleaned_data
    edit = crew.add_people(
        event_id=event.pk,
        user_id=user_id_of(request),
        people=[UUID(each) for each in given["people"]],
        hours=given["hours"],
    )
    tell_saved(request, event, edit)
    return ""


def _keep(request: HttpRequest, event: Event) -> Outcome:
    helper = request.POST.get("thing", "")
    person = crew.keep_person(event_id=event.pk, user_id=user_id_of(request), helper_id=helper)
    answers.told(request, _("%(name)s is in your address book.") % {"name": person.name})
    return f"crew-{helper}"


ACTIONS = {"helper": _save, "helper-out": _remove, "from-book": _add_people, "keep": _keep}
