"""One number reads the same wherever it is read: table, picture, sheet, sentence, order and text of JSON."""

import random
import re
from functools import cache

import pytest

from configurator.documents.hardware_schedule import schedule_document
from configurator.documents.order import order_document
from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.pages.page import Page, papers
from configurator.drawing.sheets import sheet_maker
from configurator.model import Job, Opening
from configurator.order.book import tally_job
from configurator.order.take_off import take_off
from configurator.project_file import load
from configurator.resource_files import resource_path
from configurator.study import Candidate, Study, study
from configurator.study.events import moments
from configurator.study.over_the_swing import OverTheSwing, over_the_swing
from configurator.study.widths.leaf_widths import LeafWidths, widths_of
from configurator.study.widths.width_pair import width_pair
from configurator.units import Display, format_size
from configurator.wording.comparison import Row, comparisons
from configurator.wording.swing_words import moment_words, swing_rows
from configurator.wording.verdict import client_sayings
from configurator.wording.width_words import width_table
from tests.export.random_sheets import random_opening
from tests.openings import plain_opening

DISPLAYS = (Display(16), Display(32), Display(64), Display(metric=True))
RANDOM = 8
"""Random openings in each run, beside those of both demo jobs."""
TOO_FINE = re.compile(r"\d\.\d{4,} (?:in|mm|lb)\b|\d\.\d{2,}°|[\x02\x03]")
"""What nobody reads: more decimals than are measured, and marks that were never written."""
ANGLES = ("stops short", "binds at the lock side", "where a stop goes")
"""Codes of findings whose sentence says their number `angle`."""


@cache
def jobs() -> tuple[Job, ...]:
    names = ("kestrel_point.json", "pairs_and_dutch.json")
    return tuple(load(resource_path("demo_openings", name)) for name in names)


@cache
def studies() -> tuple[Study, ...]:
    demo = [study(opening, job.job) for job in jobs() for opening in job.openings]
    openings = (random_opening(random.Random(f"reads {seed}"), seed) for seed in range(RANDOM))
    tight = study(plain_opening(door={"latch_bevel": 0}, hinge={"width": 6}, compare=[4, 6]))
    return (*demo, tight, *(study(Opening.model_validate(one)) for one in openings))


@cache
def widths() -> tuple[tuple[LeafWidths, ...], ...]:
    """What every stock width would do, of each study: worked out once for all displays."""
    return tuple(widths_of(one) for one in studies())


@cache
def swings() -> tuple[tuple[OverTheSwing, ...], ...]:
    """What happens over the swing, of each study."""
    return tuple(over_the_swing(one, 1 / 16) for one in studies())


@pytest.fixture(params=DISPLAYS, ids=lambda one: "mm" if one.metric else f"1/{one.precision}")
def display(request) -> Display:
    return request.param


def rows_of(one: Study, display: Display) -> dict[tuple[str, str], Row]:
    """The rows of the comparison by leaf and key."""
    return {(table.leaf, row.key): row for table in comparisons(one, display) for row in table.rows}


def value(rows: dict[tuple[str, str], Row], one: Study, candidate: Candidate, key: str) -> str | None:
    """What the comparison says of one candidate; None where it has no such row."""
    row = rows.get((candidate.leaf, key))
    alike = [other.hinge_width for other in one.candidates if other.leaf == candidate.leaf]
    return None if row is None else row.values[alike.index(candidate.hinge_width)].partition(",")[0]


def candidate_of(one: Study, leaf: str, width: float) -> Candidate | None:
    """The leaf on that hinge width; None where it is not among those compared."""
    return next((each for each in one.candidates if (each.leaf, each.on) == (leaf, width)), None)


def told(page: Page) -> list[str]:
    """All texts of a page but its dimensions."""
    drawn = [*page.furniture, *(item for one in page.details for item in one.primitives)]
    return [item.text for item in drawn if isinstance(item, Text)]


def dimensions(page: Page) -> list[Dimension]:
    drawn = [item for one in page.details for item in one.primitives]
    return [item for item in drawn if isinstance(item, Dimension)]


def test_a_finding_says_what_the_comparison_says(display):
    seen = set()
    for one in studies():
        rows = rows_of(one, display)
        for candidate in one.candidates:
            for finding in candidate.findings:
                for number, key in (("clear_width", "clear_width_at_90"), ("gap", "latch_edge_least")):
                    if number in finding.numbers:
                        assert value(rows, one, candidate, key) in finding.said(display), finding
                        seen.add(number)
                if finding.code in ANGLES and "angle" in finding.numbers:
                    angle = display.angle(finding.numbers["angle"])
                    assert angle in finding.said(display), finding
                    keys = ("greatest_angle", "greatest_angle_bare")
                    assert angle in {value(rows, one, candidate, key) for key in keys}, finding
                    seen.add("angle")
    assert seen == {"clear_width", "gap", "angle"}


def test_the_reason_of_a_width_says_what_the_comparison_says(display):
    found = 0
    for one in studies():
        rows = rows_of(one, display)
        for leaf in one.specification.leaves:
            width = leaf.parts["width"]
            chosen = candidate_of(one, leaf.leaf, width.value)
            clear = value(rows, one, chosen, "clear_width_at_90") if chosen else None
            if clear not in (None, "not reached") and "clear width" in width.said(display):
                assert f"clear width {clear}" in width.said(display)
                found += 1
    assert found > 10


def test_the_table_of_widths_says_what_the_comparison_says(display):
    for one, leaves in zip(studies(), widths(), strict=True):
        rows = rows_of(one, display)
        for leaf in leaves:
            lines = {line.width: line.cells for line in width_table(leaf, display).lines}
            for candidate in one.candidates:
                if candidate.leaf == leaf.leaf and candidate.hinge_width in lines:
                    _, fits, bare, whole, clear, *_ = lines[candidate.hinge_width]
                    if fits == "no" and not bare:
                        continue
                    for said, key in ((bare, "greatest_angle_bare"), (whole, "greatest_angle")):
                        assert said == value(rows, one, candidate, key)
                    assert clear == value(rows, one, candidate, "clear_width_at_90")


def test_the_swing_says_what_the_comparison_says(display):
    for one, found in zip(studies(), swings(), strict=True):
        rows = rows_of(one, display)
        for leaf in dict.fromkeys(each.leaf for each in one.candidates):
            own = [each for each in found if each.leaf == leaf]
            lines = {row.name: row for row in swing_rows(own, display)}
            lock = next((row for name, row in lines.items() if name.startswith("Lock edge,")), None)
            for index, swing in enumerate(own):
                candidate = candidate_of(one, leaf, swing.on)
                assert candidate is not None
                for row, key in ((lines["Hinge edge"], "hinge_edge_least"), (lock, "latch_edge_least")):
                    if row is not None and "touches" not in row.values[index]:
                        assert row.values[index].partition(" at ")[0] == value(rows, one, candidate, key)


def test_the_moments_of_a_swing_say_what_the_comparison_says(display):
    for one in studies():
        rows = rows_of(one, display)
        said = " ".join(moment_words(moment, one, display) for moment in moments(one))
        for candidate in one.candidates:
            rests = value(rows, one, candidate, "rests_at")
            assert (rests or value(rows, one, candidate, "greatest_angle")) in said


def test_a_client_reads_what_the_comparison_says(display):
    for one in studies():
        two = width_pair(one)
        rows = rows_of(one, display)
        said = " ".join(client_sayings(one, two, display))
        last = two.both[-1]
        clear = value(rows, one, last, "clear_width_at_90")
        if clear not in (None, "not reached"):
            assert f"{clear} wide" in said or f": {clear} is left" in said or f": {clear} it is then" in said


def test_picture_and_table_of_a_sheet_say_what_the_comparison_says(display):
    paper = next(iter(papers().values()))
    clear_widths = 0
    for one in studies()[:: 1 if display.metric else 3]:
        page = sheet_maker("plan")(one, jobs()[0].job, paper, None, display, (1, 1))
        rows = rows_of(one, display)
        texts = told(page)
        for (_, key), row in rows.items():
            if key not in ("greatest_angle", "greatest_angle_bare"):
                assert {each.partition(",")[0] for each in row.values} <= set(texts), (one.opening.mark, key)
        shown = [item for item in dimensions(page) if item.name == "clear width at 90"]
        said = {value(rows, one, each, "clear_width_at_90") for each in one.candidates}
        for item in shown:
            assert item.text.partition(" clear")[0] in said
            clear_widths += 1
    assert clear_widths


def test_an_order_and_a_schedule_say_what_json_says():
    for job in jobs():
        tallies = tally_job(job)
        order = take_off(tallies)
        document = order_document(order)
        cells = [cell for table in (*document.data, *document.sheets) for row in table.rows for cell in row]
        for one in order.findings:
            assert any(one.finding.message in str(cell) for cell in cells)
        schedule = schedule_document(tallies, job.job)
        angles = [str(cell) for table in schedule.data for row in table.rows for cell in row]
        for one in (study(opening, job.job) for opening in job.openings):
            rows = rows_of(one, Display())
            for leaf in one.specification.leaves:
                ordered = candidate_of(one, leaf.leaf, leaf.parts["width"].value)
                if ordered is not None:
                    angle = value(rows, one, ordered, "greatest_angle")
                    assert any(angle in cell for cell in angles), (one.opening.mark, angle)


def test_a_message_of_json_is_the_sentence_in_inches():
    for one in studies():
        for finding in one.all_findings():
            assert finding.as_data()["message"] == finding.said(Display())


def test_nobody_reads_more_decimals_than_are_measured(display):
    paper = next(iter(papers().values()))
    for one in studies():
        parts = [part for leaf in one.specification.leaves for part in leaf.parts.values()]
        said = [
            *(finding.said(display) for finding in one.all_findings()),
            *(fix.said(display) for finding in one.all_findings() for way in finding.fixes for fix in way),
            *(part.said(display) for part in parts),
            *(other.said(display) for part in parts for other in part.alternatives),
            *(value for row in rows_of(one, display).values() for value in (*row.values, row.difference)),
        ]
        for kind in ("plan", "elevation", "prep", "client"):
            if one.specification.leaves and one in studies()[::5]:
                page = sheet_maker(kind)(one, jobs()[0].job, paper, None, display, (1, 1))
                said += [*told(page), *(item.text for item in dimensions(page))]
        assert [text for text in said if TOO_FINE.search(text)] == [], one.opening.mark


@pytest.mark.parametrize("millimetres", [1000, 36.5125])
def test_an_opening_in_millimetres_reads_in_plain_numbers(millimetres):
    inches = millimetres / 25.4
    assert not TOO_FINE.search(Display().exact(inches))
    assert not TOO_FINE.search(Display(metric=True).exact(inches))
    assert not TOO_FINE.search(f"{format_size(inches)} in")
