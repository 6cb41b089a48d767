"""The supper, made impossible: nobody may tend the fire until the food should be on the table."""

import tomllib

import tomli_w

from tests.store.cast import example_text


def nobody_for_the_fire() -> str:
    """The event file, with those who may tend a fire there only from 17:50 on; the supper is at 18:00."""
    tables = tomllib.loads(example_text())
    for helper in tables["crew"]:
        if "fire" in helper["skills"]:
            helper["windows"] = ["17:50-19:30"]
    return tomli_w.dumps(tables)
