"""Importing a schedule as a person and as another program does it."""

from pathlib import Path

import pytest

from configurator.cli import main
from configurator.project_file import load
from configurator.project_file.held import open_held

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
DOORS = ROOT / "demo_openings" / "door_schedule.csv"
GOOD = "Mark,Size,Hand\n101A,3670,LH\n900,3070,RH\n"
BAD = GOOD + "901,big,LH\n"


@pytest.fixture
def job(tmp_path):
    path = tmp_path / "job.json"
    path.write_bytes(DEMO.read_bytes())
    return path


def schedule(tmp_path, text):
    path = tmp_path / "doors.csv"
    path.write_text(text)
    return path


def ran(capsys, *words):
    status = main([str(word) for word in words])
    out, err = capsys.readouterr()
    return status, out, err


def test_a_good_schedule_is_taken(capsys, job, tmp_path):
    status, out, err = ran(capsys, "import", schedule(tmp_path, GOOD), "--into", job)
    assert (status, err) == (0, "")
    assert "changed: 101A: opening width 36 in → 42 in" in out
    after = {opening.mark: opening for opening in load(job).openings}
    assert after["101A"].size.width == 42
    assert after["101A"].hardware  # what the schedule does not say stays
    assert after["900"].hand == "RH"
    assert len(after) == len(load(DEMO).openings) + 1


def test_with_a_fault_nothing_is_written_and_nothing_printed(capsys, job, tmp_path):
    before = job.read_bytes()
    status, out, err = ran(capsys, "import", schedule(tmp_path, BAD), "--into", job)
    assert (status, out) == (2, "")
    assert err.startswith("line 4, Size: “big” is not an opening size")
    assert "--take-good takes the 2 good rows" in err
    assert job.read_bytes() == before
    assert sorted(path.name for path in tmp_path.iterdir()) == ["doors.csv", "job.json"]


def test_the_good_rows_are_taken_when_asked(capsys, job, tmp_path):
    status, out, _ = ran(capsys, "import", schedule(tmp_path, BAD), "--into", job, "--take-good")
    assert status == 0
    assert "not taken: line 4, Size" in out
    assert "900" in {opening.mark for opening in load(job).openings}


def test_a_second_time_there_is_nothing_to_take(capsys, job, tmp_path):
    words = ("import", schedule(tmp_path, GOOD), "--into", job)
    ran(capsys, *words)
    before = job.stat().st_mtime_ns
    status, out, _ = ran(capsys, *words)
    assert status == 0
    assert "nothing to take" in out
    assert job.stat().st_mtime_ns == before


def test_a_dry_run_writes_nothing(capsys, job, tmp_path):
    before = job.read_bytes()
    status, out, _ = ran(capsys, "import", schedule(tmp_path, BAD), "--into", job, "--dry-run")
    assert status == 0
    assert "not taken: line 4" in out
    assert job.read_bytes() == before


def test_openings_are_removed_only_when_asked(capsys, job, tmp_path):
    _, out, _ = ran(capsys, "import", schedule(tmp_path, GOOD), "--into", job)
    assert "not in the schedule, kept: 112A" in out
    _, out, _ = ran(capsys, "import", schedule(tmp_path, GOOD), "--into", job, "--remove-missing")
    assert "not in the schedule, removed: 112A" in out
    assert [opening.mark for opening in load(job).openings] == ["101A", "900"]


def test_a_job_that_is_not_there_is_begun(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    assert ran(capsys, "import", schedule(tmp_path, GOOD), "--into", fresh)[0] == 0
    assert [opening.mark for opening in load(fresh).openings] == ["101A", "900"]


def test_a_job_somebody_else_works_on_is_not_written(capsys, job, tmp_path):
    theirs, _ = open_held(job)
    before = job.read_bytes()
    try:
        status, out, err = ran(capsys, "import", schedule(tmp_path, GOOD), "--into", job)
    finally:
        theirs.release()
    assert (status, out) == (2, "")
    assert "is open by" in err
    assert job.read_bytes() == before


def test_questions_are_answered_by_options(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    doors = schedule(tmp_path, "Mark,Size,Leaves\n1,84 x 36,\n2,84 x 36,pair\n")
    status, _, err = ran(capsys, "import", doors, "--into", fresh)
    assert status == 2
    assert "--size-order" in err
    status, _, err = ran(capsys, "import", doors, "--into", fresh, "--size-order", "height")
    assert status == 2
    assert "--pair-width" in err
    words = ("--size-order", "height", "--pair-width", "leaf")
    assert ran(capsys, "import", doors, "--into", fresh, *words)[0] == 0
    assert [opening.size.width for opening in load(fresh).openings] == [36, 72]


def test_columns_are_corrected_by_options(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    doors = schedule(tmp_path, "Ref,Br,Ho\n1,915,2134\n")
    status, _, err = ran(capsys, "import", doors, "--into", fresh)
    assert status == 2
    assert "hold the marks" in err
    words = ("--column", "Ref=mark", "--column", "Ho=height:mm", "--column", "Br=width:mm")
    assert ran(capsys, "import", doors, "--into", fresh, *words)[0] == 0
    assert load(fresh).openings[0].size.height == pytest.approx(2134 / 25.4)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("", "is empty"),
        ("Mark,Size\n", "no door under it"),
        ("a,b\nc,d\n", "hold the marks"),
        ("\x00\x01\x02", "not text"),
    ],
)
def test_what_is_no_schedule_is_refused_in_a_line(capsys, job, tmp_path, text, said):
    status, out, err = ran(capsys, "import", schedule(tmp_path, text), "--into", job)
    assert (status, out) == (2, "")
    assert said in err
    assert len(err.splitlines()) == 1


def test_a_missing_schedule_a_wrong_sheet_and_a_wrong_column(capsys, job, tmp_path):
    assert "is not there" in ran(capsys, "import", tmp_path / "no.csv", "--into", job)[2]
    doors = schedule(tmp_path, GOOD)
    assert "is no workbook" in ran(capsys, "import", doors, "--into", job, "--sheet", "A")[2]
    assert "no column “X”" in ran(capsys, "import", doors, "--into", job, "--column", "X=mark")[2]
    assert "hold the marks" in ran(capsys, "import", doors, "--into", job, "--column", "Mark=")[2]


def test_the_demo_schedule_has_good_rows_and_bad_ones(capsys, job):
    status, _, err = ran(capsys, "import", DOORS, "--into", job)
    assert status == 2
    assert [line.split(":")[0].split(",")[0] for line in err.splitlines()[:-1]] == [
        "line 12", "line 15", "line 16", "line 17", "line 18",
    ]  # fmt: skip
    assert ran(capsys, "import", DOORS, "--into", job, "--take-good")[0] == 0
    after = {opening.mark: opening for opening in load(job).openings}
    assert after["304A"].size.width == 72
    assert after["304A"].leaves == "pair"
    assert after["301B"].size.width == pytest.approx(915 / 25.4)
    assert after["303A"].use.fire_rated is True
    assert "302A" not in after


def test_what_is_asked_of_rows_is_answered_by_option(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    doors = schedule(tmp_path, "Mark,Size,Remarks\n1,3070,Pocket door\n2,3070,typ. of 3\n")
    status, _, err = ran(capsys, "import", doors, "--into", fresh)
    assert status == 2
    assert "--answer 'no hinged door=…'" in err
    assert "leave out or by others or hinged" in err
    words = ("--answer", "no hinged door=by others", "--answer", "typical=quantity")
    assert ran(capsys, "import", doors, "--into", fresh, *words)[0] == 0
    first, second = load(fresh).openings
    assert (first.hung_on, second.quantity) == ("by others", 3)


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (("--answer", "doors=none"), "is no question; they are size order, pair width"),
        (("--answer", "typical=five"), "is no answer to typical: quantity or one"),
        (("--answer", "typical"), "is not QUESTION=ANSWER"),
        (("--read", "Size=x"), "is not HEADING=OLD=NEW"),
        (("--read", "Size=x=3070"), "no cell under “Size” reads “x”"),
    ],
)
def test_an_answer_that_is_none_is_refused(capsys, job, tmp_path, words, said):
    status, out, err = ran(capsys, "import", schedule(tmp_path, GOOD), "--into", job, *words)
    assert (status, out) == (2, "")
    assert said in err


def test_like_faults_are_one_line_and_mended_in_one_word(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    rows = "".join(f"{n},3070,POTMETAL\n" for n in range(717))
    doors = schedule(tmp_path, f"Mark,Size,Door Matl\n{rows}")
    status, _, err = ran(capsys, "import", doors, "--into", fresh)
    assert status == 2
    assert err.startswith("717 rows, Door Matl: “POTMETAL” is not known here")
    assert len(err.splitlines()) == 2
    words = ("--read", "Door Matl=potmetal=16 ga HM")
    assert ran(capsys, "import", doors, "--into", fresh, *words)[0] == 0
    assert {one.door.construction for one in load(fresh).openings} == {"hollow metal, 16 gage"}


def test_other_columns_notes_and_the_job_s_name_are_kept(capsys, tmp_path):
    fresh, kept = tmp_path / "new.json", tmp_path / "as-read.csv"
    doors = schedule(
        tmp_path,
        "Kestrel Point Ferry Terminal\nMark,Size,Keynote\n101,3070,8.14\n102,3070,\n"
        "Notes\n1. Verify doors 101 and 102 on site.\n",
    )
    _, out, _ = ran(capsys, "import", doors, "--into", fresh, "--dry-run")
    assert "not read: Keynote (1 cell)" in out
    assert not fresh.exists()
    words = ("--keep-others", "--name-job", "--report", kept)
    status, out, _ = ran(capsys, "import", doors, "--into", fresh, *words)
    assert status == 0
    assert "not read" not in out
    job = load(fresh)
    assert (job.job.name, job.openings[0].other_columns) == (
        "Kestrel Point Ferry Terminal",
        {"Keynote": "8.14"},
    )
    assert job.openings[1].questions == "Note 1 under the schedule: Verify doors 101 and 102 on site."
    assert "1. Verify doors 101 and 102 on site." in job.job.notes
    assert "8.14" in kept.read_text()
    assert "nothing to take" in ran(capsys, "import", doors, "--into", fresh, "--keep-others")[1]


def test_several_sheets_of_doors_are_asked_by_name(capsys, tmp_path):
    from openpyxl import Workbook

    book = Workbook()
    for name in ("Level 1", "Level 2"):
        sheet = book.create_sheet(name)
        for row in (["Mark", "Size", "Hand"], [f"{name[-1]}01", "3070", "LH"]):
            sheet.append(row)
    doors, fresh = tmp_path / "doors.xlsx", tmp_path / "new.json"
    book.save(doors)
    status, _, err = ran(capsys, "import", doors, "--into", fresh)
    assert status == 2
    assert (
        "has 2 sheets with the headings of a door schedule: “Level 1”, “Level 2”; say which with --sheet"
        in err
    )
    assert ran(capsys, "import", doors, "--into", fresh, "--sheet", "level 2")[0] == 0
    assert [one.mark for one in load(fresh).openings] == ["201"]


def test_commas_can_be_said(capsys, tmp_path):
    fresh = tmp_path / "new.json"
    doors = schedule(tmp_path, 'Mark,Width (mm),Height (mm)\n1,"1,010","2,110"\n')
    status, _, err = ran(capsys, "import", doors, "--into", fresh, "--commas", "decimal")
    assert status == 2
    assert "1 mm wide and 2 mm high is no door" in err
    assert ran(capsys, "import", doors, "--into", fresh)[0] == 0
    assert load(fresh).openings[0].size.width == pytest.approx(1010 / 25.4)
