"""Drawing from the command line: sheets, pictures, and refusals in words."""

from pathlib import Path

import pytest

from configurator.cli import main
from configurator.drawing import sheets
from configurator.project_file import load
from configurator.resource_files import resource_path

DEMO = str(resource_path("demo_openings", "kestrel_point.json"))


def draw(*words):
    return main(["draw", DEMO, *map(str, words)])


@pytest.mark.parametrize(("ending", "start"), [("pdf", b"%PDF"), ("svg", b"<?xml"), ("png", b"\x89PNG")])
def test_a_plan_sheet_of_one_opening(tmp_path, capsys, ending, start):
    path = tmp_path / f"sheet.{ending}"
    assert draw("--mark", "112A", "--sheet", "plan", "--out", path) == 0
    assert path.read_bytes().startswith(start)
    assert capsys.readouterr().out == f"{path}: plan of 112A\n"


def test_a_pdf_and_an_svg_are_sheets_and_a_png_is_the_picture_unless_a_sheet_is_asked_for(tmp_path, capsys):
    for ending in ("pdf", "svg", "png"):
        assert draw("--mark", "205A", "--out", tmp_path / f"a.{ending}") == 0
        assert draw("--mark", "205A", "--sheet", "plan", "--out", tmp_path / f"b.{ending}") == 0
    capsys.readouterr()
    for ending, same in (("pdf", True), ("svg", True), ("png", False)):
        pair = [(tmp_path / f"{name}.{ending}").read_bytes() for name in "ab"]
        assert (pair[0] == pair[1]) is same, ending


def test_the_whole_job_is_one_pdf_with_a_bookmark_for_every_opening(tmp_path, capsys):
    path = tmp_path / "job.pdf"
    assert draw("--all", "--out", path) == 0
    written = path.read_bytes()
    assert "14 sheets (plan)" in capsys.readouterr().out
    assert all(f"({mark} plan)".encode() in written for mark in ("101A", "112A", "201A"))


def test_what_a_kind_of_sheet_cannot_show_is_named_and_the_others_are_drawn(tmp_path, capsys, monkeypatch):
    maker = sheets.sheet_maker

    def some(kind, revisions):
        def make(study, *given):
            if study.opening.mark in refused:
                raise ValueError("there is nothing to show")
            return maker(kind, revisions)(study, *given)

        return make

    refused = {"112A", "205A"}
    monkeypatch.setattr(sheets, "sheet_maker", some)
    path = tmp_path / "job.pdf"
    assert draw("--all", "--out", path) == 0
    said = capsys.readouterr().out
    assert "12 sheets (plan)" in said
    assert "not drawn: 112A, there is nothing to show\nnot drawn: 205A, " in said
    assert draw("--mark", "112A", "--out", tmp_path / "one.pdf") == 2
    assert "nothing to show (112A)" in capsys.readouterr().err
    refused |= {opening.mark for opening in load(Path(DEMO)).openings}
    assert draw("--all", "--out", tmp_path / "none.pdf") == 2
    assert "no opening has such a sheet; 101A, " in capsys.readouterr().err
    assert [one.name for one in tmp_path.iterdir()] == ["job.pdf"]


def test_one_width_alone_is_drawn_larger(tmp_path, capsys):
    one, both = tmp_path / "one.svg", tmp_path / "both.svg"
    assert draw("--mark", "112A", "--paper", "Tabloid", "--width", '4-1/2"', "--out", one) == 0
    assert draw("--mark", "112A", "--paper", "Tabloid", "--out", both) == 0
    assert "4-1/2 x 4 hinge<" in both.read_text()
    assert "4-1/2 x 4 hinge<" not in one.read_text()
    assert "4-1/2 x 4-1/2 hinge, recommended<" in one.read_text()
    capsys.readouterr()


def test_a_width_that_is_not_compared_is_drawn_all_the_same(tmp_path, capsys):
    path = tmp_path / "six.svg"
    assert draw("--mark", "112A", "--width", "6", "--out", path) == 0
    text = path.read_text()
    assert "4-1/2 x 6 hinge" in text
    assert "hinge, recommended<" not in text
    capsys.readouterr()


def test_scale_paper_and_millimetres_are_what_was_asked_for(tmp_path, capsys):
    path = tmp_path / "a.svg"
    assert draw("--mark", "112A", "--scale", "1:10", "--paper", "a3", "--metric", "--out", path) == 0
    text = path.read_text()
    assert 'width="420mm"' in text
    assert ">1:10<" in text
    assert " mm pin axis off door face<" in text
    capsys.readouterr()


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--mark", "112A", "--scale", "7", "--out", "a.pdf"], "--scale: is one of full, 6, 3"),
        (
            ["--mark", "112A", "--scale", "full", "--out", "a.pdf"],
            "--scale: full size does not fit on Letter",
        ),
        (
            ["--mark", "112A", "--width", "25", "--out", "a.pdf"],
            "--width: a hinge open width is from 1 to 24 in; 25 was given",
        ),
        (["--mark", "112A", "--width", "wide", "--out", "a.pdf"], "--width: “wide” is not a length"),
        (
            ["--all", "--width", "4", "--sheet", "elevation", "--out", "a.pdf"],
            "--width: is for the plan only",
        ),
        (["--mark", "112A", "--paper", "B5", "--out", "a.pdf"], "--paper: is one of Letter, Tabloid"),
        (["--mark", "112A", "--sheet", "roof", "--out", "a.pdf"], "--sheet: is one of plan"),
        (
            ["--mark", "112A", "--sheet", "plan", "--out", "a.bmp"],
            "--out: must end in .pdf, .svg, .dxf, .png",
        ),
        (
            ["--mark", "112A", "--sheet", "plan", "--angle", "90", "--out", "a.pdf"],
            "--angle: is for the picture",
        ),
        (["--mark", "112A", "--paper", "A3", "--swept", "--out", "a.pdf"], "--swept: is for the picture"),
        (["--all", "--out", "a.svg"], "--out: must end in .pdf, .dxf for all openings"),
        (["--mark", "nine", "--out", "a.pdf"], "--mark: there is no opening 'nine'"),
    ],
)
def test_what_cannot_be_drawn_is_refused_and_nothing_written(tmp_path, capsys, monkeypatch, words, said):
    monkeypatch.chdir(tmp_path)
    assert draw(*words) == 2
    heard = capsys.readouterr()
    assert heard.err.startswith(said)
    assert heard.out == ""
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("words", [["--out", "a.pdf"], ["--mark", "112A", "--all", "--out", "a.pdf"]])
def test_one_opening_or_all_of_them_must_be_said(capsys, words):
    with pytest.raises(SystemExit) as stopped:
        draw(*words)
    assert stopped.value.code == 2
    (line,) = capsys.readouterr().err.splitlines()
    assert "--mark" in line


def test_a_job_without_openings_has_nothing_to_draw(tmp_path, capsys):
    job = tmp_path / "job.json"
    job.write_text('{"format": "opening-project", "version": 1, "job": {}, "openings": []}')
    assert main(["draw", str(job), "--all", "--out", str(tmp_path / "a.pdf")]) == 2
    assert "no opening to draw" in capsys.readouterr().err


def test_a_sheet_that_cannot_be_written_exits_with_3(tmp_path, capsys):
    assert draw("--mark", "112A", "--out", tmp_path / "nowhere" / "a.pdf") == 3
    assert "could not be written" in capsys.readouterr().err


def test_a_job_has_an_index_and_several_plans_on_a_sheet(tmp_path, capsys):
    path = tmp_path / "job.pdf"
    assert draw("--all", "--together", "--index", "--out", path) == 0
    assert capsys.readouterr().out == f"{path}: 5 sheets (plan)\n"


@pytest.mark.parametrize(
    ("words", "refusal"),
    [
        (("--mark", "112A", "--index"), "--index: is for --all openings"),
        (("--all", "--together", "--sheet", "prep"), "--together: is for the plan"),
        (("--all", "--index", "--sheet", "client"), "--index: is for the sheets of the shop"),
    ],
)
def test_what_is_for_a_whole_job_is_refused_elsewhere(tmp_path, capsys, words, refusal):
    assert draw(*words, "--out", tmp_path / "x.pdf") == 2
    assert refusal in capsys.readouterr().err
