"""Every address of the pages."""

from django.urls import path

from cookout.web.views import accounts, calendars, events, fire, helpers, plan, revisions, run_sheet, share

EVENT = "events/<uuid:event>/"
REVISION = EVENT + "revisions/<int:number>/"
HELPER = EVENT + "helpers/<str:helper>/"
RUN = EVENT + "runs/<int:run>/"

urlpatterns = [
    path("", events.start, name="start"),
    path("sign-in/", accounts.sign_in, name="sign-in"),
    path("sign-out/", accounts.sign_out, name="sign-out"),
    path("demo/enter/<str:signed>/", accounts.enter_demo, name="demo-enter"),
    path("events/new/", events.new, name="event-new"),
    path(EVENT, plan.show, name="event"),
    path(EVENT + "document/", events.document, name="event-document"),
    path(EVENT + "document/file/", events.download, name="event-file"),
    path(EVENT + "delete/", events.delete, name="event-delete"),
    path(EVENT + "plan/", plan.start, name="plan-start"),
    path(EVENT + "plan.json", plan.download, name="plan-json"),
    path(RUN, plan.run_panel, name="run"),
    path(RUN + "stop/", plan.stop, name="run-stop"),
    path(RUN + "cancel/", plan.cancel, name="run-cancel"),
    path(RUN + "ways-out/<int:number>/", plan.take_way_out, name="way-out"),
    path(EVENT + "revisions/", revisions.listed, name="revisions"),
    path(REVISION, revisions.show, name="revision"),
    path(REVISION + "plan.json", revisions.download_plan, name="revision-json"),
    path(REVISION + "event.toml", revisions.download_document, name="revision-file"),
    path(EVENT + "run-sheet/", run_sheet.show, name="run-sheet"),
    path(EVENT + "run-sheet.pdf", run_sheet.pdf, name="run-sheet-pdf"),
    path(EVENT + "fire/", fire.show, name="fire"),
    path(EVENT + "fire.pdf", fire.pdf, name="fire-pdf"),
    path(EVENT + "helpers/", helpers.listed, name="helpers"),
    path(HELPER, helpers.show, name="helper"),
    path(HELPER + "call-sheet.pdf", helpers.pdf, name="helper-pdf"),
    path(HELPER + "link/", helpers.make_link, name="helper-link"),
    path(HELPER + "link/end/", helpers.end_link, name="helper-link-end"),
    path(EVENT + "calendar.ics", calendars.own, name="calendar"),
    path(EVENT + "calendar/link/", calendars.make_link, name="calendar-link"),
    path(EVENT + "calendar/link/end/", calendars.end_link, name="calendar-link-end"),
    path("h/<str:token>/", share.call_sheet, name="call-sheet"),
    path("h/<str:token>/call-sheet.pdf", share.call_sheet_pdf, name="call-sheet-pdf"),
    path("c/<str:token>.ics", calendars.feed, name="feed"),
]
