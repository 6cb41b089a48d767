"""The usual cautions, as printed on every sheet. Local codes and the organiser always go first.

Distances, two hours and 48 hours: state fire code and forest service tips, USDA-FSIS; burns: from memory.
"""

from cookout.sheets.printing import gettext_noop

FIRE, BURNS = gettext_noop("Fire"), gettext_noop("Burns")
CARBON_MONOXIDE = gettext_noop("Carbon monoxide")
FOOD, ASH = gettext_noop("Food"), gettext_noop("Ash")

CAUTIONS: dict[str, str] = {
    FIRE: gettext_noop(
        "Cook in the open, at least 10 feet (3 m) from anything that burns; some ask for more. Water and a shovel "
        "stand within reach, and children stay outside a ring of 3 feet (1 m). Your local fire code decides."
    ),
    BURNS: gettext_noop(
        "Iron and coals look cold long before they are. Gloves, a lid lifter, closed shoes, nothing loose. Cool a burn "
        "under running water, and get help if in doubt."
    ),
    CARBON_MONOXIDE: gettext_noop(
        "Never burn charcoal in a tent, cabin, vehicle or any closed space, not even while it dies down. The gas "
        "cannot be seen or smelled. Headache or dizziness: out into fresh air, and call for help."
    ),
    FOOD: gettext_noop(
        "Measure the middle with a thermometer. Keep hot food hot and cold food cold; what stood out for 2 hours "
        "(1 hour above 90 °F, 32 °C) is thrown away. Ask everyone about allergies. Your local food code decides."
    ),
    ASH: gettext_noop(
        "Drown the coals, stir, and drown them again; or leave the ash for 48 hours. "
        "It goes into a metal can with a lid."
    ),
}
