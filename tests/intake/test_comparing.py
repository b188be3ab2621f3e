import csv
import io

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.documents.document import Document
from configurator.documents.schedule import schedule_table as schedule_of
from configurator.export.document import csv_bytes
from configurator.export.table_xlsx import xlsx_bytes
from configurator.intake.asking import is_ditto
from configurator.intake.columns import reading_of
from configurator.intake.comparing import openings_with
from configurator.intake.refused import rows_named
from configurator.intake.saying import report
from configurator.intake.sheet import sheet_steps
from configurator.intake.table import schedule_table
from configurator.intake.text_file import text_steps
from configurator.intake.workbook import workbook_steps
from configurator.long_work import run
from configurator.model import Job, Opening
from configurator.model.paths import value_at, vocabulary, words_of
from configurator.order.book import tally_job
from configurator.tables import FrameKindRow
from configurator.tables import table as rows_of
from tests.intake.reading import compared, table
from tests.openings import LEVER, plain_opening
from tests.sweeps import examples

HEADER = ["Mark", "Size", "Hand", "Frame", "Notes"]


def job(*openings):
    return Job(openings=openings)


def test_a_new_opening_has_what_was_said_and_no_more():
    found = compared(table(HEADER, ["101A", "3070", "LH", "KD", ""]))
    (row,) = found.good
    assert row.kind == "new"
    assert row.opening == Opening(
        mark="101A", hand="LH", size={"width": 36, "height": 84}, frame={"kind": "knocked-down drywall"}
    )
    assert row.opening.model_fields_set == {"mark", "hand", "size", "frame"}


def test_what_the_schedule_does_not_say_stays():
    before = plain_opening(mark="1", notes="mine", hardware=[LEVER], use={"closer": True})
    found = compared(table(HEADER, ["1", "3670", "RHR", "", ""]), job(before))
    (row,) = found.good
    assert row.kind == "changed"
    assert {(c.path, c.old, c.new) for c in row.changes} == {("size.width", 36, 42), ("hand", "LH", "RHR")}
    assert row.opening == plain_opening(
        mark="1", notes="mine", hardware=[LEVER], use={"closer": True}, hand="RHR", size={"width": 42}
    )


def test_what_says_the_same_is_not_touched():
    before = plain_opening(mark="1", notes=" mine ")
    found = compared(table(HEADER, ["1", "36 x 84", "lh", "KD", "mine"]), job(before))
    assert found.good[0].kind == "same"
    assert openings_with(job(before), found)[0] is before


def test_a_newer_version_shows_what_is_new_changed_and_gone():
    before = job(plain_opening(mark="1"), plain_opening(mark="2"), plain_opening(mark="3"))
    anew = table(HEADER, ["2", "3680", "LH", "", ""], ["4", "3070", "RH", "", ""], ["1", "", "", "", ""])
    assert compared(anew, before).asked("blank cell") == 1, "the job has a hand for 1"
    found = compared(anew, before, reading_of(anew).with_answer("blank cell", "keep"))
    assert [(row.opening.mark, row.kind) for row in found.good] == [
        ("2", "changed"),
        ("4", "new"),
        ("1", "same"),
    ]
    assert found.gone == ("3",)
    assert [each.mark for each in openings_with(before, found)] == ["1", "2", "3", "4"]
    assert [each.mark for each in openings_with(before, found, remove_gone=True)] == ["1", "2", "4"]
    assert openings_with(before, found)[1].size.height == 96


def test_a_mark_twice_is_named_on_both_lines_and_neither_is_taken():
    found = compared(
        table(HEADER, ["1", "3070", "LH", "", ""], ["1 ", "3070", "RH", "", ""], ["2", "3070", "", "", ""])
    )
    assert [row.line for row in found.bad] == [2, 3]
    assert "stands on line 3 too" in str(found.faults()[0])
    assert "stands on line 2 too" in str(found.faults()[1])
    assert [row.opening.mark for row in found.good] == ["2"]


def test_a_mark_that_differs_in_capitals_only_is_told():
    anew, before = table(HEADER, ["1a", "3070", "LH", "", ""]), job(plain_opening(mark="1A"))
    assert compared(anew, before).asked("new mark") == 1
    found = compared(anew, before, reading_of(anew).with_answer("new mark", "other"))
    assert found.good[0].kind == "new"
    assert "1a is taken as another opening than 1A" in found.told[0]


def test_a_bad_row_is_not_gone_from_the_schedule():
    found = compared(table(HEADER, ["1", "3070", "XX", "", ""]), job(plain_opening(mark="1")))
    assert found.gone == ()
    assert found.good == ()


@pytest.mark.parametrize(
    ("cells", "place", "said"),
    [
        (["1", "", "LH", "", ""], None, "needs its width and its height"),
        (["1", "36 x 310", "LH", "", ""], 1, "at most 300 in"),
        (
            ["1", "3070", "LH", "welded steel, butted", ""],
            None,
            "a column headed “frame proud of wall” can give it",
        ),
        (["1\n2", "3070", "LH", "", ""], 0, "a mark is one line"),
        (["1", "3070", "LH", "", "x" * 2001], 4, "up to 2,000 characters"),
        (["1", "3070", "LH", "", "bell\x07"], 4, "control characters"),
    ],
)
def test_what_the_record_refuses_is_said_beside_its_cell(cells, place, said):
    (row,) = compared(table(HEADER, cells)).bad
    (fault,) = row.faults
    assert said in fault.reason
    assert fault.place == place


def test_a_pair_and_a_double_egress():
    header = ["Mark", "Size", "Leaves"]
    assert compared(table(header, ["1", "6070", "PR"])).good[0].opening.leaves == "pair"
    (fault,) = compared(table(header, ["1", "6070", "Double egress"])).faults()
    assert "not worked out here" in fault.reason
    assert fault.heading == "Leaves"


def test_an_opening_of_the_job_needs_no_more_than_its_mark():
    before = job(plain_opening(mark="1"))
    assert compared(table(["Mark", "Qty"], ["1", "7"]), before).good[0].opening.quantity == 7


def test_assumptions_are_told_once_with_their_lines():
    rows = [[str(n), "3070", "LH", "HM", ""] for n in range(12)]
    (told,) = compared(table(HEADER, *rows)).told
    assert told.endswith("(lines 2, 3, 4, 5, 6, 7, 8, 9 and 4 more)")
    assert rows_named([4]) == "line 4"
    assert rows_named([4, 5, 9]) == "lines 4, 5 and 9"


def test_questions_count_the_rows_that_wait():
    found = table(HEADER, ["1", "84 x 36", "LH", "", ""], ["2", "3070", "LH", "", ""])
    assert compared(found).asked("size order") == 1
    answers = reading_of(found).with_answer("size order", "width").with_answer("wide door", "single")
    answered = compared(found, reading=answers)
    assert answered.asked("size order") == 0
    assert len(answered.good) == 2


def test_the_report_says_everything():
    before = job(plain_opening(mark="1", order_state="ordered"), plain_opening(mark="9"))
    found = table(
        HEADER,
        ["1", "3670", "LH", "", ""],
        ["2", "3070", "RH", "HM", ""],
        ["3", "x", "", "", ""],
        ["FLOOR", "", ""],
    )
    said = report(found, reading_of(found), compared(found, before), removed=False)
    for part in (
        "doors.csv: 3 rows under the header on line 1; 2 good (1 new, 1 changed), 1 with a fault",
        "new: 2\n",
        "changed: 1: opening width 36 in → 42 in (it is marked ordered)",
        "not in the schedule, kept: 9",
        "assumed: “HM” is taken as knocked-down drywall: ",
        "note: line 5, under the table: FLOOR",
        "not taken: line 4, Size: ",
    ):
        assert part in said


# --- Our own schedule comes back ---

AWKWARD = [
    "=1+1",
    "@x",
    "+cmd|' /C calc'!A0",
    "-3",
    "'quoted",
    "''",
    "＝wide",
    "a\nb",
    'say "no"',
    "a;b,c\td",
]
LETTERS = st.characters(codec="utf-8", exclude_categories=("Cc", "Cs", "Cn", "Co"))
TEXT = st.one_of(st.sampled_from(AWKWARD), st.text(LETTERS, min_size=1, max_size=12)).filter(
    lambda text: text.strip() == text and text
)
MARKS = TEXT.filter(
    lambda text: "\n" not in text and not text.casefold().startswith(("total", "sub", "grand"))
)
FRAMES = [row.kind for row in rows_of(FrameKindRow) if row.usual_place]


PLACES = TEXT.filter(lambda text: not is_ditto(text))
"""A location of ditto marks is that of the row above, as an architect writes it."""


@st.composite
def opening_data(draw, mark):
    data = {
        "mark": mark,
        "size": {
            "width": draw(st.floats(49, 96).map(lambda n: round(n, 3))),
            "height": draw(st.sampled_from([96.5, 98.4252, 110.0])),
        },
        "quantity": draw(st.integers(1, 40)),
        "status": draw(st.sampled_from(words_of("status"))),
        "leaves": draw(st.sampled_from(vocabulary()["leaves"])),
        "frame": {"kind": draw(st.sampled_from(FRAMES))},
    }
    for key, values in (
        ("location", PLACES),
        ("notes", TEXT),
        ("hand", st.sampled_from(vocabulary()["hand"])),
    ):
        if draw(st.booleans()):
            data[key] = draw(values)
    if draw(st.booleans()):
        data["door"] = {"construction": draw(st.sampled_from(vocabulary()["door.construction"]))}
    return data


@st.composite
def jobs(draw):
    marks = draw(st.lists(MARKS, min_size=1, max_size=4, unique_by=str.casefold))
    return Job(openings=[draw(opening_data(mark)) for mark in marks])


SAID = ("mark", "location", "quantity", "status", "hand", "leaves", "size.width", "size.height")
SAID += ("door.construction", "frame.kind", "notes")


def said(opening):
    return {path: value_at(opening, path) for path in SAID}


@examples(25)
@given(jobs())
def test_our_own_schedule_comes_back_as_the_same_openings(before):
    written = schedule_of(tally_job(before))
    workbook = xlsx_bytes(Document("Schedule", (), (written,), (), ()))
    for sheet in (
        run(text_steps(csv_bytes(written), "schedule.csv")),
        run(workbook_steps(workbook, "schedule.xlsx", None)),
    ):
        found = schedule_table(sheet)
        anew = compared(found)
        assert not anew.bad
        assert [said(row.opening) for row in anew.good] == [said(opening) for opening in before.openings]
        again = compared(found, before)
        assert {row.kind for row in again.good} == {"same"}
        assert not again.bad
        assert openings_with(before, again) == before.openings


def test_a_spreadsheet_cannot_run_what_comes_back():
    before = job(*(plain_opening(mark=mark) for mark in ("=1+1", "@x", "+cmd", "-2", "'x")))
    data = csv_bytes(schedule_of(tally_job(before)))
    cells = [row[0] for row in csv.reader(io.StringIO(data.decode()))][1:]
    assert cells == ["'=1+1", "'@x", "'+cmd", "'-2", "''x"]
    found = compared(schedule_table(run(text_steps(data, "a.csv"))))
    assert [row.opening.mark for row in found.good] == ["=1+1", "@x", "+cmd", "-2", "'x"]


def test_a_file_on_disk(tmp_path):
    path = tmp_path / "doors.csv"
    path.write_text("Mark;Size\n1;3070\n", encoding="utf-8")
    assert compared(schedule_table(run(sheet_steps(path)))).good[0].opening.size.width == 36
