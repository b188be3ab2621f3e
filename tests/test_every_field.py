"""A field is declared once: what is asked, taken, shown and done with it follows from that, or is listed.

Every field of an opening is walked. A field forgotten at one of these places fails here by its path.
"""

import copy
import re
from functools import cache

import pytest
from pydantic import ValidationError

from configurator.documents.schedule import COLUMNS as PRINTED
from configurator.intake.fields import FIELDS as READ
from configurator.model import JobFacts, Opening, Tolerances, paths
from configurator.rules.filling.tolerances import fill_tolerances
from configurator.rules.hinge_items import hinge_items
from configurator.study import study
from configurator.study.tolerance.deviations import TOLERANCE_OF
from configurator.ui.form.assumptions import taken
from configurator.ui.form.form import SECTIONS
from configurator.ui.form.rows import THING_FIELDS
from configurator.ui.schedule.columns import COLUMNS as SHOWN
from configurator.ui.schedule.columns import Column
from configurator.wording.hinge_parts import PARTS
from tests.openings import LEVER, RAIL, plain_data

EVERY = tuple(paths.every_field())
GROUPS = {path for path in EVERY if any(other.startswith(f"{path}.") for other in EVERY)}
FIELDS = tuple(path for path in EVERY if path not in GROUPS)
"""Every field that holds a value of its own."""


def missing(found, left_out):
    """Return what is neither there nor left out on purpose, and what is left out although it is there."""
    of_groups = tuple(f"{path}." for path in left_out if path in GROUPS)
    out = {path for path in FIELDS if path in left_out or path.startswith(of_groups)}
    return sorted(set(FIELDS) - set(found) - out), sorted(out & set(found))


def all_settled(found, left_out, what_to_do):
    """Hold that every field is there or left out on purpose; what to do says where it goes."""
    forgotten, needless = missing(found, left_out)
    assert forgotten == [], what_to_do
    assert needless == [], "these are there: take them from the list of what is left out"


# --- what it is called

NAME_SAYS_ALL = {"use.traffic"}


def test_every_field_has_help_or_a_name_that_says_all():
    helped = [path for path in FIELDS if paths.help_of(path)]
    all_settled(helped, NAME_SAYS_ALL, "give these a help in their record under model/")


def test_the_words_that_are_printed_are_those_the_record_accepts():
    """The schema that pydantic makes of the record, read without the walk that prints them."""
    schema = Opening.model_json_schema()
    found = set()

    def walk(node, path):
        if isinstance(node, dict):
            if "$ref" in node:
                walk(schema["$defs"][node["$ref"].rsplit("/", 1)[1]], path)
            if "enum" in node:
                found.add((path, tuple(node["enum"])))
            for key in ("anyOf", "oneOf", "allOf", "items", "propertyNames"):
                walk(node.get(key), path)
            for name, inner in node.get("properties", {}).items():
                walk(inner, f"{path}.{name}".lstrip("."))
        for inner in node if isinstance(node, list) else ():
            walk(inner, path)

    walk(schema, "")
    of_job = {("job.width_policy", ("narrowest that works", "square hinges"))}
    found = {(path, (*words, *paths.OLDER_WORDS.get(path, ()))) for path, words in found}
    assert found | of_job == set(paths.vocabulary().items())


# --- where it is asked

ASKED_ELSEWHERE = {
    "size": "one entry for both, as it is typed",
    "obstructions.kind": "chosen when it is added",
    "hardware.kind": "chosen when it is added",
    "hardware.outline": "for what few things are round from above: in the file only",
    "compare": "the chips over the picture, or a way typed there with its axis",
    "global_id": "comes with a building model",
    "background": "taken from a drawing, in a dialog of its own",
    "obstructions.element": "comes with a building model",
    "order_despite": "a button beside the order that an error holds",
    "tolerances": "the panel of tolerances has every one of them",
}


def test_every_field_can_be_entered():
    of_hinge = [f"hinge.{key}" for part in PARTS for key in part.keys]
    of_things = [f"{path}.{key}" for path, keys in THING_FIELDS.items() for key in keys]
    of_layers = ["wall.layers.name", "wall.layers.thickness"]
    of_form = [path for own in SECTIONS.values() for path in own]
    where = "give these an entry in ui/form/form.py, ui/form/rows.py or wording/hinge_parts.py"
    all_settled([*of_form, *of_hinge, *of_things, *of_layers], ASKED_ELSEWHERE, where)
    of_job = {path for path in of_form if path.startswith("job.")}
    assert of_job == {f"job.{name}" for name in JobFacts.model_fields if name != "standard_hinge"}


# --- what is taken where it is left out

NOTHING_TAKEN = {
    "mark": "must be given",
    "size": "must be given",
    "obstructions.kind": "must be given",
    "obstructions.side": "the hinge side",
    "obstructions.length": "runs on",
    "obstructions.offset": "none",
    "obstructions.bottom": "from the floor",
    "obstructions.top": "full height",
    "obstructions.element": "typed here",
    "global_id": "no building model",
    "background": "nothing under the plan",
    "hardware.kind": "must be given",
    "hardware.outline": "box",
    "existing_hinge": "not known: asked for",
    **dict.fromkeys(("location", "level", "hardware_set", "glass", "remarks", "details"), "text"),
    "other_columns": "text",
    "fire_minutes": "not known: asked for with the label",
    "notes": "text",
    "questions": "text",
    "quantity": "one",
    "status": "assumed",
    "order_state": "not ordered",
    "hung_on": "butt hinges",
    "order_despite": "every error holds the order",
    "leaves": "single",
    "hand": "not known: asked for",
    "frame.kind": "the usual kind; its own sizes are shown as assumed",
    "door.construction": "not known: the door is taken to be of the frame's make",
    "door.lead_thickness": "asked for, and the door taken as heavy",
    "door.lite_width": "no glass, or as much of the leaf as is heaviest",
    "door.lite_height": "no glass, or as much of the leaf as is heaviest",
    "door.glass_thickness": "a quarter to half an inch",
    "door.mortise_depth": "flush",
    "frame.mortise_depth": "flush",
    "frame.hinge_backset": "worked out",
    "wall.layers.name": "the wall's layers are assumed together",
    "wall.layers.thickness": "the wall's layers are assumed together",
    "use.lock_finish_bhma": "not asked",
    "use.clear_width_margin": "none",
    "use.alteration": "no",
    "use.stop_angle": "no door stop",
    "use.corridor_width": "not asked",
    "use.required_width": "not asked",
    "pull_side": "not known: asked for on an accessible route",
    "push_side": "not known: asked for on an accessible route",
    "compare": "the width that does all, and the next wider",
    "hinge.leaf_gap": "worked out",
    "hinge.electric": "none",
    "hinge.transfer": "a hinge, where wires are asked for",
    "hinge.wires": "asked for before ordering",
    "prepared_height": "not known",
    "hinge_locations": "by the usual rule",
    "door_stop.kind": "must be given",
    "door.lite_above_floor": "the lite is not drawn",
    "door.lite_from_latch": "in the middle",
    "door.lock_height": "as the lever's",
    "door.lock_backset": "as the lever's",
    "door.kick_plate": "none",
    "frame.profile": "usual of its kind",
    "frame.sizes_from": "usual",
    "frame.outline": "by the frame's sizes",
    "sill": "not known: the sections leave it out and say so",
}


def _openings():
    lever = {
        "kind": "lever",
        "projection": 2.5,
        "from_latch_edge": 4.25,
        "width": 5,
        "height": 38,
        "vertical": 2,
    }
    shared = {"door_stop": {"kind": "wall bumper", "projection": 1}, "hardware": [lever]}
    for kind in paths.words_of("frame.kind"):
        for leaves, width in (("single", 36), ("pair", 72), ("dutch", 36)):
            frame = {"frame": {"kind": kind}, "leaves": leaves, "size": {"width": width, "height": 84}}
            proud = {"wall": {"frame_proud": 0}} if "butted" in kind else {}
            yield Opening.model_validate({"mark": "1", **shared, **frame, **proud})
    things = [{"kind": "chair rail"}, {"kind": "column"}]
    left_out = {"obstructions": things, "hardware": [{"kind": "overhead stop"}], "use": {"locked": True}}
    left_out["door_stop"] = {"kind": "wall bumper"}
    yield Opening.model_validate({"mark": "1", "size": "3070", **left_out})


def test_every_field_left_out_is_shown_with_what_is_taken_for_it_and_from_where():
    found = {}
    for opening in _openings():
        answer = study(opening)
        found |= taken(answer) | fill_tolerances(opening).assumed
        found |= {f"hinge.{key}": reason for key, reason in answer.specification.whole.items()}
    assert all(one.because and one.source for one in found.values())
    plain = {re.sub(r"\.\d+\.", ".", path) for path in found}
    assert plain <= set(EVERY)
    where = "take a value for these in rules/filling/usual.py, or say why none in NOTHING_TAKEN here"
    all_settled(plain, NOTHING_TAKEN, where)


# --- where it is listed

IN_NO_SCHEDULE = {
    "order_despite", "background",
    "active_width", "split_height", "compare", "prepared_height", "obstructions", "hardware", "hinge",
    "existing_hinge", "hinge_locations", "door_stop", "tolerances", "wall.layers", "door.latch_bevel",
    "door.hinge_backset", "door.mortise_depth", "door.hinge_gap", "door.latch_gap", "door.head_gap",
    "door.meeting_gap", "door.split_gap", "door.lead_thickness", "door.weight", "door.lite_width",
    "door.lite_height", "door.glass_thickness", "frame.rabbet",
    "door.lite_above_floor", "door.lite_from_latch",
    "door.lock_height", "door.lock_backset", "door.kick_plate",
    "frame.stop_height", "frame.stop_gap",
    "frame.return_depth", "frame.hinge_backset", "frame.mortise_depth", "frame.stop_width",
    "frame.metal_thickness", "frame.profile", "frame.sizes_from", "frame.outline",
    "other_columns", "use.coastal", "use.humid",
    "use.lock_both_sides", "use.lock_finish_bhma",
    "use.clear_width_margin", "use.alteration", "use.beds_moved", "use.stop_angle",
    "use.corridor_width", "use.required_width", "pull_side", "push_side", "sill",
}  # fmt: skip
"""Details of one opening; a schedule, printed, on the screen or read from an architect's, lists openings."""


def test_every_field_is_in_a_schedule_or_is_a_detail():
    columns = {column.path for column in PRINTED} | {one.path for one in SHOWN if isinstance(one, Column)}
    found = {*columns, *(field.path for field in READ.values())} & set(FIELDS)
    where = (
        "give these a column in documents/schedule.py, ui/schedule/columns.py or intake/fields.py, "
        "or list them in IN_NO_SCHEDULE here"
    )
    all_settled(found, IN_NO_SCHEDULE, where)
    assert columns <= {*EVERY, ""}
    assert {field.path for field in READ.values()} <= {*EVERY, ""}


# --- what it does

DOES_NOTHING = {
    "mark": "a name",
    "location": "a name",
    "level": "a name",
    "hardware_set": "a name",
    "details": "for people",
    "remarks": "for people",
    "other_columns": "for people",
    "global_id": "a name",
    "background": "drawn under the plan",
    "obstructions.element": "a name",
    "notes": "for people",
    "questions": "for people",
    "order_despite": "what is ordered, not what is answered",
    "wall.layers.name": "lettered in the picture",
    **dict.fromkeys(
        ("door.lite_above_floor", "door.lite_from_latch", "door.kick_plate"), "drawn in the elevation"
    ),
    **dict.fromkeys(("door.lock_height", "door.lock_backset"), "drawn in the elevation"),
    "frame.sizes_from": "whether a profile's sizes count as assumed",
    "frame.metal_thickness": "drawn in the picture",
    "sill": "drawn and dimensioned in the sections",
    "tolerances": "asked for by themselves; every one of them is in the spread of the swing",
}
"""Fields that no answer of a study depends on."""
LOW_RAIL = RAIL | {"top": 36}
BOX = {"kind": "other", "projection": 3, "start": 1}
COLUMN = {"kind": "column", "diameter": 6, "start": 20, "offset": 6}
OLD_HINGE = {"height": 4.5, "width": 4.5, "leaf_thickness": 0.134, "corner": "square", "count": 3}
BASES = (
    plain_data(
        obstructions=[LOW_RAIL],
        hardware=[LEVER | {"vertical": 2}],
        door={"construction": "hollow metal, 18 gage"},
        door_stop={"kind": "wall bumper", "projection": 1},
        existing_hinge=OLD_HINGE,
        use={"accessible": True, "corridor_width": 60, "required_width": 44},
    ),
    plain_data(size={"width": 34, "height": 84}, door={"construction": "lead-lined"}),
    plain_data(door={"construction": "wood, solid core", "lite_width": 24, "lite_height": 30}),
    plain_data(door={"construction": "wood, solid core", "lite_width": 30}, size={"width": 36, "height": 96}),
    plain_data(frame={"kind": "wood with casing"}, wall={"layers": [{"name": "stud", "thickness": 4.5}]}),
    plain_data(obstructions=[BOX], hinge={"width": 4, "count": 1}, hardware=[LEVER | {"face": "push"}]),
    plain_data(leaves="pair", size={"width": 72, "height": 84}, hardware=[LEVER | {"leaf": "inactive"}]),
    plain_data(leaves="dutch", hinge={"base_metal": "stainless", "alloy": "304"}, obstructions=[COLUMN]),
    plain_data(obstructions=[LOW_RAIL], hinge={"width": 4}, use={"locked": True}),
    plain_data(compare=[{"hung_on": "centre-hung pivot", "axis_from_heel": 2.75}]),
    plain_data(hardware=[{"kind": "closer"}]),
    {
        **plain_data(),
        "frame": {"kind": "knocked-down drywall", "profile": "drywall 3-3/4 throat"},
        "wall": {},
    },
)
"""Openings of which one or another asks after every field."""
OF_A_TYPE = {bool: (True, False), int: (1, 2, 4, 7), str: ("626", "630", "US32D", "A5111")}
LENGTHS = (0, 1 / 64, 0.03, 0.25, 0.4, 1, 2, 3, 5.5, 7, 30, 45, 60, 90, 200)


def _values(path):
    """Return values to try in a field, whatever of them it accepts."""
    if path == "hinge.screws":
        return ({kind: 3} for kind in paths.vocabulary()[path])
    if path == "frame.outline":
        return ([[0, 0], [-1.5, 0], [-1.5, -6], [0.5, -6], [0.5, -1.75], [0, -1.75]],)
    if path in ("compare", "hinge_locations.tops"):
        return ([4, 5, 6], [6.5, 30, 60])
    if words := paths.words_of(path):
        return words
    return next((values for kind, values in OF_A_TYPE.items() if paths.holds(path, kind)), LENGTHS)


def _with(base, path, value):
    data = copy.deepcopy(base)
    paths.put(data, re.sub(r"^(obstructions|hardware|wall\.layers|compare)\.", r"\1.0.", path), value)
    return data


def _answer(data):
    """Return all that a study answers, and the hinges to order; None for an opening that is refused."""
    try:
        found = study(Opening.model_validate(data))
    except (ValidationError, ValueError, IndexError, KeyError):
        return None
    return repr((found.as_data(), hinge_items(found.specification, found.opening)))


@pytest.mark.parametrize("path", missing([], DOES_NOTHING)[0])
def test_every_field_changes_an_answer(path):
    for base, before in zip(BASES, _before(), strict=True):
        for value in _values(path):
            try:
                after = _answer(_with(base, path, value))
            except (IndexError, KeyError, TypeError):
                break  # this one has no such thing
            if after not in (None, before):
                return
    pytest.fail(
        f"whatever is given for {path}, nothing comes of it: read it in a rule or the geometry, "
        "give BASES an opening that asks after it, or say in DOES_NOTHING why not"
    )


@cache
def _before():
    return tuple(_answer(base) for base in BASES)


def test_every_tolerance_is_in_the_spread_of_the_swing():
    assert set(TOLERANCE_OF.values()) == set(Tolerances.model_fields)
