"""The hinges of an opening are the same wherever they are named: read back from every place and compared."""

import random
import re
from collections import Counter

from hypothesis import example, given, settings
from hypothesis import strategies as st

from configurator.documents.hardware_schedule import hardware_headings
from configurator.documents.order import order_table
from configurator.drawing.pages.elevation_facts import leaves_shown
from configurator.drawing.pages.notes import study_notes
from configurator.model import Hinge, JobFacts, Opening
from configurator.order.studied import NotStudied, study_or_fault
from configurator.order.take_off import take_off
from configurator.order.tally import tally
from configurator.units import Display
from configurator.wording.client_words import recommendation
from configurator.wording.hinge_order_line import order_cautions, order_lines, order_text
from configurator.wording.hinge_parts import hinge_parts
from tests.export.random_sheets import random_opening
from tests.sweeps import sized

LINE = re.compile(r"^[^:]+: (?P<count>\d+) each \(.*?\) hinges?[^,]*, (?P<size>[^,]+), (?P<rest>.*)")
SCREWS = re.compile(r"(\d+) (machine|wood) screws")
METALS = {"stainless": "stainless steel"}


def opening_of(seed):
    """An opening of any kind, with what can be asked of its hinges drawn at random."""
    dice = random.Random(seed)
    data = random_opening(dice, seed % 1000)
    data["size"] |= {"height": dice.choice([58, data["size"]["height"], 108, 122])}
    if data["leaves"] == "dutch":
        data["split_height"] = dice.choice([None, 36, 48, data["size"]["height"] - 20])
    if data["leaves"] == "pair":
        data["active_width"] = dice.choice([None, 24, 41.75])
    data["hinge"] = {
        "screws": dice.choice([None, None, {"machine": dice.randint(0, 60)}, {"machine": 10, "wood": 7}]),
        "electric": dice.choice([None, None, 1, 2, 3, 4]),
        "mounting": dice.choice([None, None, "swing clear", "half surface"]),
        "height": dice.choice([None, None, None, 4, 5, 11]),
        "finish_us": dice.choice([None, "US32D", "US99"]),
        "security_stud": dice.choice([None, True]),
    }
    data["hung_on"] = dice.choice(["butt hinges"] * 9 + ["pivots"])
    data["use"] |= {"exposure": dice.choice([None, "exterior"]), "closer": dice.random() < 0.5}
    standard = dice.choice([None, None, {"screws": {"machine": 25}}, {"height": 5, "width": 5}])
    facts = JobFacts(standard_hinge=None if standard is None else Hinge.model_validate(standard))
    return Opening.model_validate(data), facts


def key_of(line):
    """What a reader can tell one line from another by, from an order line as results are written."""
    alloy = f" {line['alloy']}" if line["alloy"] else ""
    return (
        line["size"],
        line["type"],
        line["mounting"],
        line["weight"],
        f"{line['leaf_thickness']:.3f}",
        METALS.get(line["base_metal"], line["base_metal"]) + alloy,
        line["pin"],
        line["hand"] if line["mounting"] in ("swing clear", "half surface") else "",
        line["item"] == "electric butt hinge",
        line["fire"],
    )


def ordered(order):
    """Hinges and screws of each kind, as the order counts them."""
    return {
        key_of(line): (line["quantity"], line["screws"]["machine"], line["screws"]["wood"])
        for line in order.as_data()["lines"]
    }


def read(texts):
    """Hinges and screws of each kind, as they are read from lines of text."""
    found = {}
    for line in texts:
        said = LINE.match(line)
        if said is None:
            continue
        rest = said["rest"]
        type_ = re.search(r"A156\.1 ([^,]+), ", rest)
        hand = re.search(r", hand ([^,]+), ", rest)
        key = (
            said["size"],
            type_[1] if type_ else None,
            re.search(r"(full mortise|swing clear|half surface)", rest)[1],
            re.search(r"(\w+) weight", rest)[1],
            f"{float(re.search(r'leaf ([.0-9]+) thick', rest)[1]):.3f}",
            re.search(r"knuckles, ([^,]+), ", rest)[1],
            re.search(r"([-\w]+) pin,", rest)[1],
            (None if hand[1] == "not known" else hand[1]) if hand else "",
            "electric: carries wires" in rest,
            "for a labelled fire door" in rest,
        )
        screws = Counter({kind: int(number) for number, kind in SCREWS.findall(rest)})
        before = found.get(key, (0, 0, 0))
        now = (int(said["count"]), screws["machine"], screws["wood"])
        found[key] = tuple(a + b for a, b in zip(before, now, strict=True))
    return found


@settings(max_examples=sized(30, 2000))
@given(st.integers(0, 10**9))
@example(0)
def test_bar_sheets_panel_results_and_documents_say_what_the_order_says(seed):
    opening, facts = opening_of(seed)
    study = study_or_fault(opening, facts)
    if isinstance(study, NotStudied):
        return
    tallied = tally(study)
    order = take_off([tallied], facts)
    assert order.reconciliation.agrees
    wanted = ordered(order)
    assert read(order_text(study).splitlines()) == wanted
    (note,) = (note for note in study_notes(study, Display()) if note.heading == "Hinges")
    assert read(note.paragraphs) == wanted
    _the_documents(tallied, order, wanted)
    _each_leaf(study, order)
    _the_client(study)
    _the_results(study, order)
    _the_caution(study, order)


def _the_documents(tallied, order, wanted):
    """The table of the order, and the hardware schedule, which counts one opening."""
    table = order_table(order)
    keys = [column.key for column in table.columns]
    rows = [dict(zip(keys, row, strict=True)) for row in table.rows]
    lines = [row for row in rows if row["quantity"]]
    assert {
        key_of(row): (row["quantity"], row["machine_screws"], row["wood_screws"]) for row in lines
    } == wanted
    (heading,) = hardware_headings([tallied])
    hinges = Counter()
    for item, count in heading.items:
        if item.item.endswith("butt hinge"):
            hinges[item.size, item.item] += count * heading.openings
    expected = Counter()
    for line in order.lines:
        expected[line.hinge.size, line.hinge.item] += line.quantity
    if tallied.holding:  # the schedule lists what hangs there, the order waits
        assert not expected
        for leaf_item in tallied.items:
            hinge = leaf_item.hinge
            expected[hinge.size, hinge.item] += leaf_item.count * tallied.opening.quantity
    assert hinges == expected


def _each_leaf(study, order):
    """The panel and the elevation, leaf by leaf, against the lines of that leaf."""
    lines = {leaf.leaf: [] for leaf in study.specification.leaves}
    for line in order_lines(study):
        lines[line.leaf].append(line)
    shown = {one.leaf.name: one.hinges for one in leaves_shown(study)}
    for leaf in hinge_parts(study, Display()):
        rows = {row.part.keys[0]: row.value for row in leaf.rows}
        texts = [line.text for line in lines[leaf.leaf] if line.can_order]
        if not texts:
            held = [line for line in lines[leaf.leaf] if "held by an error, not ordered" in line.text]
            assert held or rows["height"].endswith("no width to be had does what this opening asks")
            continue
        found = read(texts)
        count = sum(number for number, *_ in found.values())
        assert rows["count"].startswith(f"{count // study.opening.quantity} hinge")
        wired = any(key[-2] for key in found)
        assert (shown[leaf.leaf].electric is not None) == wired
        assert (rows["electric"] != "none carries wires") == wired
        assert shown[leaf.leaf].electric is None or str(shown[leaf.leaf].electric) in rows["electric"]


def _the_client(study):
    """The client's page counts the hinges of each leaf of one opening."""
    leaves = study.specification.leaves
    if not leaves or not study.candidates:
        return
    lines = read_by_leaf(study)
    said = recommendation(study, Display())
    if not study.recommended:
        assert not any(re.search(r"\d+ hinges?, ", words) for words in said)
        return
    for leaf, words in zip(leaves, said, strict=True):
        counts = re.search(r"(?:^|: )(\d+) hinges?, ([^ ]+ x [^ ]+) in", words)
        if leaf.leaf not in lines:
            assert counts is None
            continue
        assert lines[leaf.leaf] == (int(counts[1]) * study.opening.quantity, {counts[2]})


def read_by_leaf(study):
    """Hinges and sizes of each leaf that hinges can be ordered for, from the lines of the bar."""
    found = {}
    for line in order_lines(study):
        for key, (count, *_) in read([line.text]).items():
            before, sizes = found.get(line.leaf, (0, set()))
            found[line.leaf] = before + count, sizes | {key[0]}
    return found


def _the_results(study, order):
    """The results of a comparison count one opening: hinges and screws of it, and of each leaf."""
    given = study.recommended
    if not given or order.not_ordered:
        return
    assert given["count"] * study.opening.quantity == order.hinges
    for kind in ("machine", "wood"):
        number = given["screws"].get(kind, 0)
        lines = [line.screws[kind] for line in order.lines]
        # A number by hand goes up to whole screws line by line, so a set with wires may have one over.
        assert 0 <= sum(lines) - number * study.opening.quantity < len(lines)
        if "leaves" in given:
            assert sum(leaf["screws"].get(kind, 0) for leaf in given["leaves"].values()) == number


def _the_caution(study, order):
    """Which leaf carries the wires is asked in all places or in none."""
    asked = any(one.code == "electric hinge leaf" for one in study.findings)
    assert asked == any(one.finding.code == "electric hinge leaf" for one in order.findings)
    assert asked == any("on which leaf" in caution for caution in order_cautions(study))
