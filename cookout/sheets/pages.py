"""What every printed sheet carries, as plain data for the templates."""

from datetime import datetime
from zoneinfo import ZoneInfo

from cookout.core.planning.record import PlannedHelper, PlanRecord
from cookout.sheets.cautions import CAUTIONS, FIRE
from cookout.sheets.job import Job
from cookout.sheets.typesetting import Data, qr_picture, typeset


def stamp_of(record: PlanRecord) -> datetime:
    """A time for the file that the record itself decides: its first start, or the day the calendar of files began."""
    return min((task.starts_at for task in record.tasks), default=datetime(2000, 1, 1, tzinfo=ZoneInfo("UTC")))


def printed(template: str, job: Job, data: Data, *, cautions: tuple[str, ...] = tuple(CAUTIONS)) -> bytes:
    """The PDF of a template with what every sheet carries and data of its own; `cautions` are keys of `CAUTIONS`."""
    whole = {**frame(job, cautions), **data}
    return typeset(template, whole, paper=job.printing.paper, stamp=stamp_of(job.record))


def frame(job: Job, cautions: tuple[str, ...] = tuple(CAUTIONS)) -> dict[str, object]:
    """What every sheet carries: event, place, day, weather, revision, address, warnings, cautions, obstacles."""
    record, printing, _ = job.record, job.printing, job.printing.gettext
    day = job.first_day()
    return {
        "title": record.event_name,
        "event": record.event_name,
        "day": day,
        "about": tuple(line for line in (day, record.place, job.told(record.weather)) if line),
        "language": printing.language,
        "revision": printing.revision_words,
        "address": printing.address,
        "qr": qr_picture(printing.address) if printing.address else None,
        "warnings": tuple({"text": job.told(w.text), "remedy": job.told(w.remedy)} for w in record.warnings),
        "cautions": tuple({"name": _(name), "text": _(CAUTIONS[name])} for name in cautions),
        "obstacles": tuple(job.told(text) for text in record.obstacles) if not record.tasks else (),
        "ways": tuple(_("Way out: {text}").format(text=job.told(way.text)) for way in record.ways_out),
        "words": _common_words(job, cautions),
    }


def _common_words(job: Job, cautions: tuple[str, ...]) -> Data:
    _ = job.printing.gettext
    return {
        "page_of": _("page {number} of {count}"),
        "code": _("The code opens this page as it stands now."),
        "code_name": _("QR code of this address: {address}").format(address=job.printing.address),
        "cautions": _("Before you light anything") if FIRE in cautions else _("Take care"),
        "warnings": _("Mind on the day"),
        "no_plan": _("There is no plan yet"),
    }


def calls(job: Job) -> list[Data]:
    """Who comes when, in order of their call."""
    called = [(helper.called_at, helper) for helper in job.record.helpers if helper.called_at is not None]
    return [
        {"called": job.clock(at), "name": helper.name, "note": call_note(helper, job)}
        for at, helper in sorted(called, key=lambda pair: (pair[0], pair[1].name))
    ]


def call_note(helper: PlannedHelper, job: Job) -> str:
    """Until when a helper is needed, and how much of it is work."""
    _ = job.printing.gettext
    if helper.free_at is None:
        return _("not needed in this plan")
    return _("until {time}, {minutes} min of work").format(time=job.clock(helper.free_at), minutes=helper.work_minutes)
