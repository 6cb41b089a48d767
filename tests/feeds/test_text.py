"""Cleaning, escaping and folding; examples from RFC 5545 sections 3.1 and 3.3.11."""

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from cookout.feeds.calendars import event_calendar
from cookout.feeds.text import category_value, lines_of, lines_value, one_line, text_value
from tests.feeds.bytecheck import LONGEST_LINE, faults, read, unescape, unfold
from tests.feeds.records import SAVED_AT
from tests.samples import sample_record


def test_line_breaks_commas_and_semicolons_are_escaped_as_in_section_3_3_11() -> None:
    value = lines_value(["Project XYZ Final Review", "Conference Room - 3B", "Come Prepared."])
    assert value.to_ical() == rb"Project XYZ Final Review\nConference Room - 3B\nCome Prepared."
    assert text_value('a,b;c:"d"').to_ical() == rb'a\,b\;c:"d"'


def test_a_backslash_and_n_in_a_name_stay_a_backslash_and_n() -> None:
    # icalendar 7.3 itself writes \N as a line break.
    assert text_value(r"C:\New \n \\").to_ical() == rb"C:\\New \\n \\\\"
    assert unescape(r"C:\\New \\n \\\\") == r"C:\New \n \\"


def test_only_the_commas_between_categories_are_bare() -> None:
    assert category_value(["Hot, live", r"\N"]).to_ical() == rb"Hot\, live,\\N"


def test_one_line_takes_out_controls_and_every_kind_of_line_break() -> None:
    assert one_line("a\r\nEND:VEVENT\x00\x1b\x7f\u2028b\tc\x85d\u202e\ufeff") == "a END:VEVENT b c d"
    assert one_line("\ud800 \r\n ") == ""


def test_joiners_inside_emoji_and_scripts_stay() -> None:
    assert one_line("👩‍🌾 नमस्ते क्‍ष") == "👩‍🌾 नमस्ते क्‍ष"


def test_lines_of_a_detail_stay_lines() -> None:
    assert lines_of("Cold butter;\r\n\n  stop at  pea size.\n") == ("Cold butter;", "stop at pea size.")


def test_a_line_is_folded_at_75_octets_and_unfolds_to_what_it_was_as_in_section_3_1() -> None:
    text = "This is a long description that exists on a long line, and goes on for some more octets than fit."
    data = event_calendar(replace(sample_record(), weather=text), revision=1, stamped_at=SAVED_AT)
    assert max(map(len, data.split(b"\r\n"))) == LONGEST_LINE
    assert f"DESCRIPTION:Boathouse meadow\\, Lake Ellery\\n{text.replace(',', chr(92) + ',')}" in unfold(data)


@given(st.integers(0, 80), st.sampled_from(["é", "€", "🍏", "\\", ";", "a"]))
def test_a_fold_never_cuts_a_character_wherever_it_falls(lead: int, character: str) -> None:
    name = "x" * lead + character * 60
    data = event_calendar(replace(sample_record(), tasks=()), revision=1, stamped_at=SAVED_AT, name=name)
    assert faults(data) == []
    assert unescape(read(data).value("NAME")) == name


@given(st.text(st.characters(exclude_categories=["Cc", "Cs", "Zl", "Zp"])))
def test_reading_an_escaped_text_from_left_to_right_gives_it_back(text: str) -> None:
    assert unescape(text_value(text).to_ical().decode()) == one_line(text)
