"""Every finding of the demo job, the ten slips and what else can be typed: plain, its number, its mend.

`every_finding.txt` beside this file has all that is chosen and said for these openings, a line each. Where a
change means another value, finding, weight, number or mend, run `REWRITE=1 pytest -n 0` on this
file and read what that changes in the file.
"""

import ast
import os
import re
from pathlib import Path

import pytest

from configurator import rules
from configurator.model import Hinge, JobFacts
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.rules.finding import MARKS
from configurator.rules.specification import LeafSpecification, Specification
from configurator.study import job_findings, study
from configurator.units import Display
from tests.rules.hung import LEVER, opening

DEMO = load(resource_path("demo_openings", "kestrel_point.json"))
MARKED = {one.mark: one for one in DEMO.openings}


def demo(mark, **changes):
    return MARKED[mark].model_validate({**MARKED[mark].model_dump(exclude_unset=True), **changes})


THICK_CASING = {"kind": "casing", "projection": 1, "start": -0.5, "length": 3}
RAIL = {"kind": "chair rail", "projection": 1.75, "start": 0.5, "bottom": 32, "top": 36}
ASTRAGAL = {"kind": "astragal", "leaf": "upper", "projection": 0.1875, "from_latch_edge": 18, "width": 33}
ASTRAGAL |= {"height": 42, "vertical": 2}
FLOOR = {"kind": "floor stop", "projection": 3, "from_frame": 28}
SLIPS = {
    "hinge size swapped": opening(hinge={"height": 4, "width": 4.5}),
    "door size swapped": opening(size={"width": 84, "height": 36}),
    "measured from where": demo("112A"),
    "hardware meets first": opening(hardware=[LEVER]),
    "too narrow to pass": opening(hinge={"height": 4.5, "width": 7}),
    "pairs for hinges": opening(quantity=40, hinge={"count": 6}),
    "too few hinges": opening(size={"width": 36, "height": 96}, quantity=20, hinge={"count": 3}),
    "hinges by leaf": opening(leaves="dutch", hinge={"count": 3}),
    "fire metal": demo("140A", hinge={"finish_bhma": "626"}),
    "corridor at rest": demo("160A", hinge={"width": 4.5}),
    "changed since the order": demo("112B", order_state="ordered", hinge={"height": 4.5, "width": 4.5}),
}
"""The code that catches each of the ten slips (the seventh has two), to the opening typed so."""
OLD = {"height": 4, "width": 4.5, "leaf_thickness": 0.13, "corner": "1/4 radius", "count": 2}
BY_HAND = {"height": 4.5, "width": 4.5, "corner": "square", "mounting": "full mortise"}
MORE = {
    "locked from both sides": opening(use={"lock_both_sides": True}),
    "fire rating disagrees": opening(fire_minutes=90, use={"fire_rated": False}),
    "lock contradicted": opening(use={"locked": False, "lock_both_sides": True}),
    "pin exposed": opening(use={"lock_both_sides": True}, hinge={"pin": "removable"}),
    "finish differs from the lock": opening(use={"lock_finish_bhma": "605"}, hinge={"finish_bhma": "652"}),
    "finish near the lock's": opening(use={"lock_finish_bhma": "626"}, hinge={"finish_bhma": "630"}),
    "lock finish unknown": opening(use={"lock_finish_bhma": "1"}),
    "reveal does it too": opening(
        frame={"kind": "wood with casing"}, door={"thickness": 1.75}, obstructions=[THICK_CASING]
    ),
    "margin not kept": opening(use={"clear_width_margin": 4}),
    "preparation fits": opening(prepared_height=4.5),
    "preparation differs": opening(prepared_height=5, hinge={"height": 4.5}),
    "preparation low": opening(size={"width": 42, "height": 84}, prepared_height=4.5),
    "preparation too low": demo("130A", prepared_height=4.5),
    "corner differs": opening(existing_hinge=OLD, hinge=BY_HAND),
    "mounting differs": opening(existing_hinge={"mounting": "half surface"}, hinge=BY_HAND),
    "hinge too high": opening(door={"thickness": 1.375}, hinge={"height": 4.5}),
    "closer degree": opening(hardware=[{"kind": "closer"}]),
    "closer as a stop": opening(hardware=[{"kind": "closer", "opens_to": 100}]),
    "overhead stop holds": opening(hardware=[{"kind": "overhead stop"}]),
    "arm past the opening": opening(
        obstructions=[{"kind": "column", "start": 10}], hardware=[{"kind": "overhead stop", "opens_to": 175}]
    ),
    "arm template": opening(hardware=[{"kind": "closer"}], compare=[6]),
    "sizes not given": opening(obstructions=[{"kind": "chair rail"}], hardware=[{"kind": "lever"}]),
    "old width fails": opening(existing_hinge={"width": 3.5}),
    "replacement on a fire door": demo("140A", existing_hinge=OLD),
    "lighter than its skins": opening(door={"weight": 60}),
    "lite larger than the leaf": opening(door={"lite_width": 24, "lite_height": 84}),
    "tight at the lock side": opening(door={"latch_bevel": 0}, hinge={"width": 6}),
    "metal exposed": opening(use={"exposure": "exterior"}, hinge={"base_metal": "steel"}),
    "finish unstable": opening(hinge={"finish_bhma": "613"}),
    "finish metal": opening(hinge={"finish_bhma": "626", "base_metal": "steel"}),
    "finish unknown": opening(hinge={"finish_bhma": "1"}),
    "type disagrees": opening(hinge={"type": "A8111"}),
    "weight too light": demo("130A", hinge={"weight": "standard"}),
    "plain bearing with closer": opening(hinge={"bearing": "plain"}),
    "closer template": opening(hinge={"width": 6}),
    "electric hinge": opening(hinge={"electric": 2}),
    "electric hinge idle": opening(hinge={"electric": 2, "transfer": "door loop"}),
    "electric transfer": opening(hinge={"transfer": "concealed transfer"}),
    "wires on pivots": opening(hinge={"wires": 4}, compare=[{"hung_on": "offset pivot"}]),
    "electric hinge place": opening(hinge={"electric": 1}),
    "electric hinge leaf": opening(leaves="dutch", hinge={"electric": 2}),
    "mineral core": opening(door={"construction": "wood, mineral core"}),
    "not here": opening(hung_on="pivots"),
    "another way to hang it": opening(frame={"kind": "aluminum storefront"}),
    "heel binds": opening(compare=[{"hung_on": "centre-hung pivot"}]),
    "axis not given": opening(compare=[4.5, {"hung_on": "offset pivot"}]),
    "no stop in the frame": opening(compare=[{"hung_on": "double-acting spring hinge"}]),
    "way on a fire door": opening(
        compare=[{"hung_on": "double-acting spring hinge"}], use={"fire_rated": True}
    ),
    "lead-lined": opening(door={"construction": "lead-lined"}),
    "outside the tables": opening(size={"width": 36, "height": 240}),
    "no stock width": opening(hinge={"height": 5.5}),
    "hand unknown": opening(hand=None),
    "hand of the hinge": opening(hand=None, hinge={"mounting": "swing clear"}),
    "no casing given": opening(frame={"kind": "wood with casing"}),
    "wall thicker than throat": opening(frame={"jamb_depth": 5.75}),
    "throat wider than wall": opening(frame={"jamb_depth": 6.5}),
    "wall thicker than jamb": opening(frame={"kind": "wood with casing", "jamb_depth": 4.5}),
    "jamb deeper than wall": opening(frame={"kind": "wood with casing", "jamb_depth": 6}),
    "no returns": opening(frame={"kind": "aluminum storefront", "return_depth": 0.5}),
    "no room for a stop": opening(frame={"jamb_depth": 1.875}),
    "stop too wide": opening(frame={"stop_width": 5}),
    "tile in the throat": opening(
        wall={
            "thickness": None,
            "layers": [{"name": "tile", "thickness": 0.5}, {"name": "block", "thickness": 5.625}],
        }
    ),
    "door stands proud": opening(frame={"rabbet": 1.5}),
    "backsets disagree": opening(door={"hinge_backset": 0.25}, frame={"hinge_backset": 0.5}),
    "gaps disagree": opening(hinge={"leaf_gap": 0.0625}),
    "stop short of wanted": opening(use={"stop_angle": 60}),
    "leaves open in order": opening(leaves="dutch", hardware=[ASTRAGAL]),
    "neither leaf opens": opening(
        leaves="dutch", hardware=[ASTRAGAL, {**ASTRAGAL, "face": "push", "kind": "other"}]
    ),
    "astragal covers nothing": opening(leaves="dutch", hardware=[{**ASTRAGAL, "height": 44}]),
    "where a stop goes": opening(
        obstructions=[{"kind": "return wall", "start": 4}], use={"wanted_angle": 90}
    ),
    "where the door rests": opening(door_stop=FLOOR),
    "two door stops": opening(door_stop=FLOOR, use={"stop_angle": 90}),
    "stop underfoot": opening(door_stop={**FLOOR, "projection": 12, "from_frame": 20}),
    "stop where people walk": opening(door_stop={"kind": "wall bumper", "projection": 5}),
    "stop misses the leaf": opening(door_stop={**FLOOR, "height": 0}),
    "stop never met": opening(door_stop={**FLOOR, "from_frame": 40}),
    "stop near the edge": opening(door_stop={**FLOOR, "from_frame": 33}),
    "stop met too late": opening(door_stop={**FLOOR, "projection": 1.5}, hardware=[LEVER]),
    "stop behind trim": opening(door_stop={**FLOOR, "height": 34}, obstructions=[{**RAIL, "projection": 4}]),
    "stop in the doorway": opening(door_stop={"kind": "floor stop", "projection": 40}),
    "refused": opening(hinge={"height": 5, "width": 8, "mounting": "half mortise"}),
    "hinges do not fit": opening(leaves="dutch", split_height=83.8),
    "hinges overlap": opening(hinge={"count": 16}),
    "hinge places number": opening(hinge_locations={"tops": [5, 69.5]}),
    "hinge off its leaf": opening(hinge_locations={"tops": [0, 37, 69.5]}),
    "typed hinges overlap": opening(hinge_locations={"tops": [5, 8, 69.5]}),
    "leaf too short": opening(size={"width": 36, "height": 8}, hinge={"count": 1}),
    "backset too deep": opening(door={"hinge_backset": 2}),
    "leaf below flush": opening(door={"mortise_depth": 1}),
    "leaves clash": opening(door={"mortise_depth": 0}, hinge={"leaf_thickness": 1}),
    "alloy without stainless": opening(hinge={"base_metal": "brass", "alloy": "316"}),
    "screws do not hold": opening(hinge={"screws": {"wood": 24}}),
    "knuckles not usual": opening(hinge={"knuckles": 2}),
    "type not checked": opening(hinge={"type": "A8112", "mounting": "half mortise"}),
    "width not compared": opening(compare=[8]),
    "hardware on no leaf": opening(hardware=[{**LEVER, "leaf": "upper"}]),
    "hardware in the way": opening(
        hardware=[{**LEVER, "face": "push", "projection": 5.5, "from_latch_edge": 18}]
    ),
    "barrel overlaps": opening(hinge={"width": 4, "barrel": 2.5}),
    "overlaps closed": opening(obstructions=[{"kind": "other", "projection": 2, "start": -12, "length": 3}]),
    "wider than stock": opening(hinge={"width": 10}),
    "hinge too low": opening(hinge={"height": 3.5}),
    "preparation serves": opening(
        size={"width": 42, "height": 84}, prepared_height=4.5, hinge={"height": 4.5, "weight": "heavy"}
    ),
    "corridor kept": opening(use={"corridor_width": 96, "required_width": 44}),
    "one leaf or two": opening(size={"width": 72, "height": 84}),
    "fire row from memory": opening(
        use={"fire_rated": True},
        size={"width": 36, "height": 60},
        hinge={"height": 4, "leaf_thickness": 0.13},
    ),
    "fire spring hinges": opening(hung_on="spring hinges", use={"fire_rated": True}),
    "fire size": opening(use={"fire_rated": True}, size={"width": 60, "height": 96}),
    "fire bearing": opening(use={"fire_rated": True}, hinge={"bearing": "plain"}),
    "fire height": opening(use={"fire_rated": True}, hinge={"height": 4}),
    "fire gage": opening(use={"fire_rated": True}, hinge={"leaf_thickness": 0.1}),
    "finish not on metal": opening(hinge={"finish_us": "US32D", "base_metal": "brass"}),
    "finish disagree": opening(hinge={"finish_us": "US3", "finish_bhma": "626"}),
    "lock unknown": opening(hand="LHR", use={"locked": None}),
    "angle not asked for": opening(obstructions=[{**RAIL, "projection": 3}], use={"wanted_angle": None}),
    "alloy ask first": opening(use={"exposure": "exterior", "coastal": True}),
}
"""Further codes, each to an opening that has it."""
OF_THE_STANDARD = {
    "standard too low": Hinge(height=3.5),
    "standard outranks": Hinge(width=5),
    "standard does not do": Hinge(width=3.5),
}
"""Codes, each to a standard hinge of the job that is remarked on at the usual opening."""
BY_LEAF = {
    "a Dutch door of three hinges and two": opening(
        leaves="dutch", size={"width": 36, "height": 96}, split_height=66
    ),
    "a pair of unequal leaves": opening(leaves="pair", size={"width": 66, "height": 90}, active_width=42),
    "a pair of a high leaf's hinges": opening(
        leaves="pair", size={"width": 80, "height": 120}, active_width=48
    ),
}
"""Openings whose leaves differ, so that no sum of one serves for both."""
DEEP = {"kind": "other", "projection": 6, "start": 1}
NO_WIDTH = {
    "deep trim at the frame": opening(obstructions=[{**DEEP, "start": 0}]),
    "deep trim and a square edge": opening(door={"latch_bevel": 0}, obstructions=[DEEP]),
    "less deep trim and a square edge": opening(
        door={"latch_bevel": 0}, obstructions=[{**DEEP, "projection": 3.5}]
    ),
    "less deep trim and a tight gap": opening(
        door={"latch_bevel": 0.0625, "latch_gap": 0.0625}, obstructions=[{**DEEP, "projection": 3.5}]
    ),
    "swing clear asked": opening(hinge={"mounting": "swing clear"}, obstructions=[{**RAIL, "projection": 8}]),
    "deep trim and a width by hand": opening(hinge={"width": 4}, obstructions=[{**DEEP, "projection": 5}]),
    "a wall": opening(obstructions=[{"kind": "return wall", "start": 1}]),
    "a column": opening(obstructions=[{"kind": "column", "start": 2, "diameter": 12, "offset": 0}]),
    "a casing at the barrel": opening(
        frame={"kind": "wood with casing"},
        obstructions=[{"kind": "casing", "projection": 4, "start": -0.25, "length": 4}, {**DEEP, "start": 4}],
    ),
    "too narrow an opening": opening(size={"width": 32, "height": 84}),
    "a little too narrow": opening(size={"width": 34.5, "height": 84}, use={"wanted_angle": 90}),
    "too narrow a pair": opening(leaves="pair", size={"width": 60, "height": 84}),
}
"""What no hinge width does, or hardly: each with the mends that are offered."""
INCHES = Display()
USUAL = study(opening(), DEMO.job)
OF_A_JOB = {"widths differ"}
"""Codes that no single opening has; `tests/rules/checks/test_egress_and_slips.py` has them."""

MENDS = (
    "add|ask|bevel|check|choose|confirm|cut|fill|fit|give|have|hold|keep|leave|let|make|measure|move|order|plug|put|say|"
    "set|shim|square|stop|swap|take"
)
WHAT_TO_DO = re.compile(rf"(?:^|[.;:,?] |\b(?:or|and|else|then) )(?:{MENDS})\b", re.IGNORECASE)
RESTS_ON_WORDS = {
    "hand of the hinge",
    "fire listing", "finish unstable", "finish metal", "metal exposed", "mineral core", "not here",
    "hand unknown", "pin exposed", "locked from both sides", "lock contradicted", "plain bearing with closer",
    "replacement on a fire door", "mounting differs", "corner differs", "check the holes", "weight too light",
    "type not checked", "fire bearing", "lock unknown", "way on a fire door",
    "another way to hang it",
}  # fmt: skip
"""Rules without a number of their own: what they rest on is the source beside them."""


EVERY_FINDING = Path(__file__).with_name("every_finding.txt")
STUDIES = {
    **{one.mark: study(one, DEMO.job) for one in DEMO.openings},
    **{name: study(one, DEMO.job) for name, one in (SLIPS | MORE | BY_LEAF | NO_WIDTH).items()},
    **{name: study(opening(), JobFacts(standard_hinge=one)) for name, one in OF_THE_STANDARD.items()},
}
EVERYTHING = {name: one.all_findings() for name, one in STUDIES.items()}
EVERYTHING["job"] = job_findings([study(one) for one in DEMO.openings])
_EACH = {one.message: (one, name) for name, found in EVERYTHING.items() for one in found}
FINDINGS = [pytest.param(finding, id=f"{name} {finding.code}") for finding, name in _EACH.values()]


def figures(sentence):
    return " ".join(re.findall(r"\d(?:[\d./ -]*\d)?", sentence))


def told(finding):
    """Return a finding on a line: code, weight, numbers, its figures, what its mends put where."""
    numbers = " ".join(f"{name}={number:.8g}" for name, number in finding.numbers.items())
    mends = " or ".join("; ".join(f"{fix.path}={fix.value!r}" for fix in fixes) for fixes in finding.fixes)
    said = figures(finding.message)
    return f"  {finding.code} | {finding.severity} | {numbers} | {said} | {mends}".rstrip(" |")


def chosen(leaf):
    """Return the hinges of a leaf, a line a part: what was chosen, the figures of its reason, what else."""
    for name, part in leaf.parts.items():
        others = ", ".join(f"{other.value} ({figures(other.said(INCHES))})" for other in part.alternatives)
        said = figures(part.said(INCHES))
        yield f"  {leaf.leaf} {name}: {part.value} | {said} | {others}".rstrip(" |")
    yield f"  {leaf.leaf}: complete {leaf.complete}, wires in {leaf.electric}"


def all_of(name):
    """Return the lines that tell all that is chosen and found for an opening here."""
    spec = STUDIES[name].specification if name in STUDIES else Specification((), ())
    lines = [line for leaf in spec.leaves for line in chosen(leaf)]
    if len(spec.leaves) > 1:
        lines += chosen(LeafSpecification("whole", spec.whole, True))
        lines += [f"  {leaf.leaf} screws each: {dict(leaf.screws_each)}" for leaf in spec.leaves]
    return list(dict.fromkeys([*lines, *map(told, EVERYTHING[name])]))


def test_all_that_is_said_of_these_openings_and_nothing_else():
    """Of what can be typed only what differs from the usual opening is written down, with what is gone."""
    usual = [line for leaf in USUAL.specification.leaves for line in chosen(leaf)]
    usual += map(told, USUAL.all_findings())
    lines = ["the usual opening", *usual]
    for name in EVERYTHING:
        here, known = all_of(name), set(() if name in (*MARKED, *BY_LEAF, "job") else usual)
        lines += [name, *(one for one in here if one not in known)]
        lines += [f"  not {one.strip()}" for one in usual if one in known and one not in here]
    if "REWRITE" in os.environ:
        EVERY_FINDING.write_text("".join(f"{line}\n" for line in lines), "utf-8")
    assert lines == EVERY_FINDING.read_text("utf-8").splitlines()


@pytest.mark.parametrize("finding", FINDINGS)
def test_a_client_understands_it(finding):
    assert finding.message[0].isupper() or finding.message[0].isdigit()
    assert finding.message.endswith((".", "?"))
    assert 20 < len(finding.message) < 420
    assert not re.search(r"_|None|nan|\d\.\d{4}|[{}\[\]]", finding.message.replace("hinge.finish_bhma", ""))
    assert finding.source
    assert finding.mark_of_source in MARKS


@pytest.mark.parametrize("finding", [one for one in FINDINGS if one.values[0].code not in RESTS_ON_WORDS])
def test_it_gives_the_number_it_rests_on(finding):
    assert finding.numbers or re.search(r"\d", finding.message), finding.message


@pytest.mark.parametrize("finding", FINDINGS)
def test_it_says_what_to_do(finding):
    assert WHAT_TO_DO.search(finding.message), finding.message


@pytest.mark.parametrize("code", [*SLIPS, *MORE])
def test_what_was_typed_is_caught(code):
    given = {**SLIPS, **MORE}[code]
    assert code in {finding.code for finding in study(given, JobFacts()).all_findings()}


@pytest.mark.parametrize("code", OF_THE_STANDARD)
def test_what_the_job_asks_for_is_remarked_on(code):
    facts = JobFacts(standard_hinge=OF_THE_STANDARD[code])
    assert code in {finding.code for finding in study(opening(), facts).all_findings()}


def test_every_code_of_a_rule_has_an_opening_here():
    """A finding made in a rule is tried above; a code that is worked out stands in its rule's own test."""
    room = Path(rules.__file__).parent
    calls = [
        node.args[0]
        for path in room.rglob("*.py")
        for node in ast.walk(ast.parse(path.read_text("utf-8")))
        if isinstance(node, ast.Call) and ast.unparse(node.func) == "finding"
    ]
    codes = {code.value for code in calls if isinstance(code, ast.Constant)}
    assert len(codes) > 80
    untried = sorted(codes - {one.values[0].code for one in FINDINGS} - OF_A_JOB)
    assert untried == [], "no opening here has these: is the rule called? Give MORE an opening that has it"


@pytest.mark.parametrize("finding", [one for one in FINDINGS if one.values[0].fix])
def test_a_mend_is_named_on_its_button(finding):
    assert finding.fix[0].label
