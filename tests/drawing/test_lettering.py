"""Estimated widths and broken lines."""

from hypothesis import given
from hypothesis import strategies as st

from cookout.drawing.lettering import cells, shortened, text_width, wrap


def test_wide_letters_take_two_columns_and_joined_marks_none() -> None:
    assert cells("abc") == 3
    assert cells("火を見る") == 8
    assert cells("é") == 1
    assert cells("a\N{ZERO WIDTH JOINER}b") == 2


def test_bold_and_broad_letters_are_wider() -> None:
    assert text_width("mill", 12) < text_width("mill", 12, bold=True)
    assert text_width("iii", 12) < text_width("nnn", 12) < text_width("NNN", 12) < text_width("WWW", 12)


def test_lines_break_between_words() -> None:
    assert wrap("Lay coals: 8 on the lid", 10, text_width("Lay coals: 8", 10)) == ("Lay coals: 8", "on the lid")


@given(st.text(alphabet="abc MW火é", max_size=60), st.integers(20, 120))
def test_no_line_is_too_wide_and_no_letter_is_lost(text: str, width: int) -> None:
    lines = wrap(text, 10, width)
    assert all(text_width(line, 10) <= width for line in lines)
    assert "".join(lines).replace(" ", "") == text.replace(" ", "")


@given(st.text(alphabet="abc MW火é,", max_size=40), st.integers(0, 200))
def test_shortened_words_fit_and_begin_as_the_whole_ones(text: str, width: int) -> None:
    short = shortened(text, 10, width)
    assert text_width(short, 10) <= width
    assert text.startswith(short.removesuffix("…"))


def test_words_that_fit_are_not_shortened_and_dots_alone_are_not_written() -> None:
    assert shortened("Lay coals", 10, 500) == "Lay coals"
    assert shortened("Lay coals", 10, 11) == ""
    assert shortened("Lay coals: 8 on the lid", 10, text_width("Lay coals:…", 10)) == "Lay coals…"
