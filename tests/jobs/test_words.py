"""What the commands say is short, and says what a reader can act on."""

from dataclasses import replace

from cookout.core.planning.problem import Aim
from cookout.core.planning.record import PlannedLevel, WayOut
from cookout.core.planning.result import Plan, Progress, Status
from cookout.jobs import words
from tests.samples import sample_record


def test_progress_is_one_line_of_minutes() -> None:
    values = ((Aim.LATENESS, 0), (Aim.FRESHNESS, 12), (Aim.CREW_DAY, 191), (Aim.FAIR_SHARES, 4))
    line = words.progress_line(Progress(1.25, "quick", Plan({}), values))
    assert line == "   1.2 s  late 0, waiting food 12, crew's day 191, above an even share 4"


def test_a_level_says_whether_it_is_proved_and_else_how_far_a_better_plan_could_go() -> None:
    record = replace(
        sample_record(),
        status=Status.BEST_FOUND,
        seconds=3.04,
        levels=(PlannedLevel("lateness", 0, 0), PlannedLevel("crew_day", 310, 290)),
    )
    assert words.outcome(record).splitlines() == [
        "The best plan found in the time given, after 3.0 s:",
        "  late at the table                             0 min  (proved least)",
        "  crew: first call to the end, and idle       310 min  (at least 290 min in any plan)",
    ]


def test_a_refusal_lists_obstacles_and_ways_out() -> None:
    record = replace(
        sample_record(),
        tasks=(),
        status=Status.IMPOSSIBLE,
        obstacles=("Nobody may tend the fire at 16:00.",),
        ways_out=(WayOut("Runa comes at 15:30.", {}), WayOut("Serve at 18:25.", {})),
    )
    assert words.refusal(record).splitlines()[1:] == [
        "What stands in the way:",
        "  - Nobody may tend the fire at 16:00.",
        "Ways out, each tried and found to give a plan:",
        "  - Runa comes at 15:30.",
        "  - Serve at 18:25.",
    ]


def test_a_search_that_ran_out_of_time_asks_for_more() -> None:
    record = replace(sample_record(), tasks=(), status=Status.NONE_FOUND, obstacles=(), ways_out=())
    assert words.refusal(record).splitlines()[-1] == "Give more time with --seconds, or ask less of the event."
