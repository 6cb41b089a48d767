"""An independent reading of every rule: nothing here is shared with whatever makes tasks or plans.

`check` reads the rules of a scheduling problem, `check_event` those of an event, `measure` what a plan is judged by.
A plan with a breach is never saved or shown.
"""

from cookout.core.planning.check.breach import Breach
from cookout.core.planning.check.events import check_event
from cookout.core.planning.check.measures import measure
from cookout.core.planning.check.problems import check

__all__ = ["Breach", "check", "check_event", "measure"]
