"""Lines of an architect's drawing laid under a plan from the command line."""

import ezdxf
import pytest

from configurator.cli import main
from configurator.drawing.base.primitives import Polyline
from configurator.drawing.pages.page import papers
from configurator.drawing.sheets import sheet_maker
from configurator.model import Job, JobFacts
from configurator.project_file import dump, load
from configurator.study import study
from configurator.units import Display
from tests.openings import plain_data


@pytest.fixture
def files(tmp_path):
    drawing = ezdxf.new("R2010", units=4)
    drawing.modelspace().add_line((10000, 20000), (10508, 20254), dxfattribs={"layer": "A-WALL"})
    drawing.saveas(tmp_path / "level.dxf")
    hands = {"1": "LH", "2": "RH"}
    openings = [plain_data(mark=mark, hand=hand) for mark, hand in hands.items()]
    (tmp_path / "job.json").write_bytes(dump(Job.model_validate({"openings": openings})))
    return tmp_path


def test_without_a_job_it_says_what_the_drawing_holds(files, capsys):
    assert main(["trace", str(files / "level.dxf")]) == 0
    assert capsys.readouterr().out == "level.dxf: unit mm\n  A-WALL: 1 line\n"


@pytest.mark.parametrize("mark", ["1", "2"])
def test_lines_lie_in_file_and_sheet_as_the_opening_is_seen(files, capsys, mark):
    words = ["trace", str(files / "level.dxf"), "--into", str(files / "job.json"), "--mark", mark]
    assert main([*words, "--layers", "A-WALL", "--at", "10000,20000"]) == 0
    assert f"background of {mark}, 1 line, unit mm" in capsys.readouterr().out
    opening = next(one for one in load(files / "job.json").openings if one.mark == mark)
    assert opening.background.lines == ("0,0 20,10",)
    page = sheet_maker("plan")(study(opening), JobFacts(), papers()["Letter"], None, Display())
    for detail in page.details:
        (line,) = (one for one in detail.primitives if one.layer == "A-ANNO-REFR")
        assert isinstance(line, Polyline)
        # Mirrored or not, it runs to the right and up on the sheet, 20 in and 10 in at its scale.
        (x_0, y_0), (x_1, y_1) = map(detail.view.to_sheet, line.points)
        assert (x_1 - x_0, y_1 - y_0) == pytest.approx((20 * detail.view.scale, 10 * detail.view.scale))
    notes = " ".join(one.text for one in page.furniture if hasattr(one, "text"))
    assert "Light lines are those of level.dxf, not checked." in notes


@pytest.mark.parametrize(
    ("more", "words"),
    [
        ([], "--layers: must be given; the drawing has A-WALL"),
        (["--layers", "A-WALL"], "within 15 ft of the corner"),
        (["--layers", "A-WALL", "--at", "1"], "--at: is two numbers"),
        (["--layers", "A-WALL", "--units", "yd"], "--units: must be given"),
        (["--layers", "X"], "no line on layer X; there are A-WALL"),
    ],
)
def test_a_refusal_is_one_line_and_the_file_stays(files, capsys, more, words):
    before = (files / "job.json").read_bytes()
    job = str(files / "job.json")
    assert main(["trace", str(files / "level.dxf"), "--into", job, "--mark", "1", *more]) == 2
    assert words in capsys.readouterr().err
    assert (files / "job.json").read_bytes() == before


def test_an_outline_is_the_frame_seen_from_the_pull_side(files, capsys):
    """A plain jamb, 2 in wide and 5 in deep with its stop, at the right of the opening as it is seen."""
    drawing = ezdxf.new("R2010", units=1)
    corners = [(0, 0), (2, 0), (2, -5), (-0.625, -5), (-0.625, -2), (0, -2)]
    drawing.modelspace().add_lwpolyline(corners, close=True, dxfattribs={"layer": "F"})
    drawing.saveas(files / "frame.dxf")
    words = ["trace", str(files / "frame.dxf"), "--into", str(files / "job.json"), "--layers", "F"]
    assert main([*words, "--as", "outline", "--mark", "1"]) == 2
    assert "a drawing of the other hand is mirrored first" in capsys.readouterr().err
    assert main([*words, "--as", "outline", "--mark", "2"]) == 0
    assert "outline of 2, 6 corners" in capsys.readouterr().out
    found = load(files / "job.json").openings[1].frame
    assert set(found.outline) == {(-x + 0.0, float(y)) for x, y in corners}
