"""The words of the trade with their meanings, as the help pages tell them.

Numbers in them are filled in from the planner's own (`web.reading.help`), so that help never tells another than plans
are made with. `standing` says who says so where a number or a habit of the trade is told.
"""

from dataclasses import dataclass

from django.utils.functional import Promise
from django.utils.translation import gettext_lazy as _

Words = str | Promise

PRACTICE = _("common practice, no source")
ONE_LOG = _("one log of one chimney, and common practice")
OUR_CHOICE = _("our own choice, no source")


@dataclass(frozen=True, slots=True)
class Word:
    """A word, by whose `id` other pages link to it, with what it means here."""

    id: str
    name: Words
    meaning: Words
    standing: Words = ""


@dataclass(frozen=True, slots=True)
class Group:
    """Words that belong together."""

    id: str
    title: Words
    words: tuple[Word, ...]


_EVENT = (
    Word("event", _("event"), _("One cookout with all that belongs to it: day and place, menu, gear, crew, plans.")),
    Word(
        "serving",
        _("serving"),
        _("A time at which people eat, such as supper at six. Everything before it is planned backward from it."),
    ),
    Word(
        "tolerance",
        _("tolerance"),
        _("How far from its time a serving may reach the table. It is a promise: later than that is no plan."),
    ),
    Word("dish", _("dish"), _("A recipe scaled for a serving. A large one is made in several batches.")),
    Word("step", _("step"), _("One thing to do in a recipe, with its minutes and the skill that it asks for.")),
    Word("task", _("task"), _("A step with a time: who does it, with what, from when until when.")),
    Word("gear", _("gear"), _("Everything of which there is only so much: ovens, chimneys, tables, trivets, coolers.")),
    Word("kit", _("kit"), _("A set of gear kept under a name, to be put into the next event in one go.")),
    Word("crew", _("crew"), _("Everybody who helps at the event.")),
    Word("helper", _("helper"), _("One of the crew, with skills and with the hours in which they can be there.")),
    Word("skill", _("skill"), _("What somebody can do and not everybody can, such as tending fire or icing a cake.")),
    Word("call-time", _("call time"), _("When a helper must be there. Nobody is called earlier than needed.")),
    Word(
        "hot-work",
        _("hot work and breaks"),
        _(
            "Work at the fire. After %(hot_stretch)d minutes of it, if you say nothing else, a helper gets a break "
            "from it of %(break)d minutes."
        ),
        OUR_CHOICE,
    ),
)

_FIRE = (
    Word("oven", _("oven"), _("A lidded iron pot that bakes with coals under it and on its lid.")),
    Word(
        "chimney",
        _("chimney"),
        _("A metal tube in which coals are lit together from below. It holds a certain count, its load."),
    ),
    Word("briquettes", _("briquettes"), _("Pressed charcoal, all of one size, so that coals can be counted.")),
    Word(
        "lump",
        _("lump"),
        _("Charcoal in the shape of the wood. Lit and spent sooner by most accounts; sizes vary, and so do counts."),
        PRACTICE,
    ),
    Word(
        "firing",
        _("firing"),
        _("Coals that are lit together. One firing can feed several ovens that want coals at about one time."),
    ),
    Word(
        "ashed-over",
        _("ashed over"),
        _(
            "White all over, and ready to use: about %(ash)d minutes after lighting for briquettes, %(ash_lump)d for "
            "lump. They are near their best until about minute %(full)d, or %(full_lump)d. Look at them."
        ),
        ONE_LOG,
    ),
    Word(
        "lid-and-under",
        _("lid and under"),
        _(
            "How many coals lie on the lid and how many under the oven. More on the lid bakes from above; nearly all "
            "under simmers and fries. Counts come with a band, because weather and charcoal differ."
        ),
    ),
    Word(
        "top-up",
        _("top-up"),
        _(
            "Fresh coals for a bake that outlasts the first ones, after about %(top_up)d minutes for briquettes and "
            "%(top_up_lump)d for lump. They are lit in time to be ashed over when they are laid."
        ),
        PRACTICE,
    ),
    Word(
        "turn",
        _("turn"),
        _(
            "The oven a quarter turn one way and the lid a quarter turn the other, so that no side burns: about every "
            "%(turn)d minutes, and every %(turn_windy)d in wind above %(windy)s."
        ),
        PRACTICE,
    ),
    Word(
        "look-in",
        _("look-in"),
        _(
            "A doneness check: the lid goes up, somebody looks and tests, the lid goes down. The first comes before "
            "the earliest minute at which the food may be done, because each one costs heat."
        ),
    ),
    Word("trivet", _("trivet"), _("A low stand in the oven that keeps a pan off its hot floor, or under an oven.")),
    Word("cooking-table", _("cooking table"), _("A fireproof table on which ovens stand at working height.")),
    Word("spot", _("spot"), _("The place of one oven on a cooking table. A table counts by its spots.")),
    Word(
        "drown",
        _("drown"),
        _(
            "Put the fire out: spread the coals, pour water, stir, pour again, until nothing steams and nothing is "
            "warm. Ash that was not drowned stays hot for up to 48 hours."
        ),
        _("fire-service advice"),
    ),
)

_FOOD = (
    Word(
        "least-usual-most",
        _("least, usual, most"),
        _("Three lengths of a bake: when it may be done, when it mostly is, when it is at the latest. Test."),
    ),
    Word(
        "hold",
        _("hold"),
        _(
            "Keep finished food hot (%(hot)s or more) or cold (%(cold)s or less) until it is served. Between the two "
            "it may stand for %(out)d minutes at most, for %(out_warm)d in air above %(warm_air)s."
        ),
        _("USDA-FSIS guidance for homes and picnics; other codes have other limits"),
    ),
    Word(
        "middle",
        _("middle temperature"),
        _("How hot the innermost part of a food must get to be safe. Only a thermometer tells."),
    ),
    Word(
        "cooling",
        _("cooling"),
        _("The wait between oven and icing. It has a least, or the icing melts, and may have a most."),
    ),
    Word("icing", _("icing"), _("Covering a cooled cake. Icings with cream or cream cheese stay cold until then.")),
    Word(
        "waiting-food",
        _("waiting food"),
        _("Finished food that stands longer than its recipe wants. The planner keeps this as short as it can."),
    ),
)

_PLAN = (
    Word("plan", _("plan"), _("A time, hands and gear for every task, so that no rule is broken.")),
    Word(
        "revision",
        _("revision"),
        _("A plan with a number. It never changes: another plan gets the next number. Old ones can come back."),
    ),
    Word(
        "held-by",
        _("held by"),
        _("Why a task can start no earlier or no later than it does: another task, a piece of gear, somebody's hours."),
    ),
    Word("slack", _("slack"), _("How much later a task could start with everything else where it stands.")),
    Word("margin", _("margin"), _("How many minutes are left at a serving before its tolerance ends.")),
    Word(
        "aim",
        _("aim"),
        _("What a plan is to be good at. The first aim comes before all others, and so on down the list."),
    ),
    Word(
        "bound",
        _("bound"),
        _("A number that no plan can beat. Where a plan reaches it, nothing better exists for that aim."),
    ),
    Word(
        "proved-best",
        _("proved best"),
        _("Every aim has reached its bound. With these firings and kinds of oven, no other plan does better."),
    ),
    Word(
        "good-not-proved",
        _("good, not proved best"),
        _("Every rule holds, and a better plan may exist. The overview says how many minutes it could save at most."),
    ),
    Word(
        "way-out",
        _("way out"),
        _("Where no plan is possible: a change to the event that was tried and does give one."),
    ),
    Word(
        "trial",
        _("what if"),
        _("A change that is planned beside the current plan. You see the difference before you keep it or drop it."),
    ),
    Word(
        "pin",
        _("pin"),
        _("Hold a task by hand to a time, to people or to a piece of gear. All the rest is planned around it."),
    ),
)

_AUDIENCE = (
    Word("demo-slot", _("demo slot"), _("A stretch of time before an audience, with a presenter.")),
    Word("live", _("live"), _("Done before the audience, in the slot, and not behind the scenes.")),
    Word(
        "ready-made",
        _("ready-made"),
        _("A finished or half-finished twin of a dish, made beforehand, that takes the place of a wait in a slot."),
    ),
    Word("running-order", _("running order"), _("What is shown, said and tasted in a slot, one after another.")),
)

_HANDED_OUT = (
    Word("run-sheet", _("run sheet"), _("The whole timeline on paper, hour by hour.")),
    Word("call-sheet", _("call sheet"), _("One helper's part: when to be there, and what to do, with whom.")),
    Word("fire-plan", _("fire plan"), _("Which coals are lit when, how many, for which oven; and what to bring.")),
    Word("allergen-card", _("allergen card"), _("For the table: what is in a dish, what may be, what nobody knows.")),
    Word(
        "helper-link",
        _("link to a call sheet"),
        _("An address that opens one helper's call sheet without an account, for whoever has it. It can be ended."),
    ),
    Word("event-file", _("event file"), _("One text file with everything that a plan is made from.")),
)

GROUPS = (
    Group("words-event", _("The event"), _EVENT),
    Group("words-fire", _("Fire and iron"), _FIRE),
    Group("words-food", _("Food"), _FOOD),
    Group("words-plan", _("The plan"), _PLAN),
    Group("words-audience", _("Before an audience"), _AUDIENCE),
    Group("words-handed-out", _("What is handed out"), _HANDED_OUT),
)
