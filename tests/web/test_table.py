"""The timeline as comma-separated values."""

import csv
from dataclasses import replace
from io import StringIO

from django.test import Client
from django.urls import reverse

from cookout.web.reading.table import COLUMNS, plan_csv
from tests.samples import sample_record
from tests.store.cast import Cast


def test_every_task_is_a_line_and_reads_back_as_it_was() -> None:
    record = sample_record()
    rows = list(csv.DictReader(StringIO(plan_csv(record))))
    assert list(rows[0]) == list(COLUMNS)
    assert {row["task"]: row["starts_at"] for row in rows} == {t.id: t.starts_at.isoformat() for t in record.tasks}
    assert [row["starts_at"] for row in rows] == sorted(row["starts_at"] for row in rows)


def test_a_name_that_a_spreadsheet_would_run_is_marked_as_text() -> None:
    record = sample_record()
    first = replace(record.tasks[0], name='=HYPERLINK("http://example.org")', detail="-2+3")
    rows = list(csv.DictReader(StringIO(plan_csv(replace(record, tasks=(first,))))))
    assert rows[0]["name"] == '\'=HYPERLINK("http://example.org")'
    assert rows[0]["detail"] == "'-2+3"


def test_the_file_is_named_for_event_and_revision(owner: Client, cast: Cast) -> None:
    answer = owner.get(reverse("plan-csv", args=[cast.event.public_id]))
    assert answer.status_code == 200
    assert answer.headers["Content-Type"] == "text/csv; charset=utf-8"
    assert f'filename="{cast.event.key}-1.csv"' in answer.headers["Content-Disposition"]
