"""The running order of a demo slot, to the minute."""

import re
from dataclasses import replace

from cookout.core.planning.record import PlannedSlot, PlannedTask, PlanRecord
from cookout.sheets import running_order_pdf
from tests.samples import at, sample_record
from tests.sheets.printed import pages_of, squeezed, text_of


def an_item(id: str, kind: str, starts: str, ends: str, name: str) -> PlannedTask:
    return PlannedTask(
        id=id, dish="crumble", name=name, kind=kind, starts_at=at(starts), ends_at=at(ends), helpers=("ilse",), gear={},
        hands_on=True, slack_minutes=0, held_by=(), live_in="show", detail="Slowly, with wide hands.",
    )  # fmt: skip


def record_with_a_show() -> PlanRecord:
    """A slot of 40 minutes: 2 open, talk 5, mix 15, 4 open, taste 10, 4 open."""
    record = sample_record()
    items = (
        an_item("show.talk.1", "talk", "17:02", "17:07", "Why the lid carries more coals"),
        an_item("crumble.mix", "mix", "17:07", "17:22", "Mix before everyone"),
        an_item("show.taste.1", "taste", "17:26", "17:36", "The twin"),
    )
    slot = PlannedSlot(
        "show", "Crumble before everyone", at("17:00"), at("17:40"), "ilse", tuple(item.id for item in items),
        (("crumble", "crumble.rub", at("17:00")), ("beans", "beans.serve", at("17:26"))),
    )  # fmt: skip
    return replace(record, tasks=(*record.tasks, *items), slots=(slot,))


def test_each_item_has_its_minute_its_clock_its_length_and_what_is_left() -> None:
    text = text_of(running_order_pdf(record_with_a_show())).partition(squeezed("Minute by minute"))[2]
    for row in (
        "0 17:00 2 min Open",
        "2 17:02 5 min TALK Why the lid carries more coals",
        "7 17:07 15 min LIVE Mix before everyone",
        "22 17:22 4 min Open",
        "26 17:26 10 min TASTE The twin",
        "36 17:36 4 min Open",
    ):
        assert squeezed(row) in text
    assert re.findall(r"(\d+)left", text) == ["38", "33", "18", "14", "4", "0"]  # 40 less all that came before


def test_what_must_stand_ready_is_named_with_when_and_what_makes_it_ready() -> None:
    text = text_of(running_order_pdf(record_with_a_show()))
    assert squeezed("by 17:00 Apple crumble à la Brandão done:") in text
    assert squeezed("by 17:26 Smoky bean pot") in text


def test_work_away_from_the_audience_stands_apart() -> None:
    record = record_with_a_show()
    text = text_of(running_order_pdf(record))
    away = text.partition(squeezed("Meanwhile, away from the audience"))[2].partition(squeezed("Before you light"))[0]
    during = [t for t in record.tasks if t.hands_on and not t.live_in and at("17:00") <= t.starts_at < at("17:40")]
    assert during
    assert all(squeezed(task.name) in away for task in during)
    assert squeezed("Mix before everyone") not in away


def test_each_slot_begins_a_page_and_counts_its_own_pages() -> None:
    record = record_with_a_show()
    second = replace(record.slots[0], id="late", name="Once more", starts_at=at("18:00"), ends_at=at("18:20"), live=())
    pages = [
        squeezed(page.extract_text())
        for page in pages_of(running_order_pdf(replace(record, slots=(second, *record.slots))))
    ]
    assert [
        name for page in pages for name in ("Crumblebeforeeveryone", "Oncemore") if name in page and "page1of" in page
    ] == [
        "Crumblebeforeeveryone",
        "Oncemore",
    ]


def test_an_event_without_a_demo_slot_is_told_so() -> None:
    assert squeezed("This plan has no demo slot.") in text_of(running_order_pdf(replace(sample_record(), slots=())))
