import struct

import pytest
from PIL import Image

from configurator.drawing.base.style import inks
from configurator.export.pages import PLAN_DPI, PLAN_SIZE, write_plan
from configurator.units import Display
from tests.drawing.cases import demo


@pytest.mark.parametrize(("ending", "start"), [(".png", b"\x89PNG"), (".svg", b"<?xml"), (".pdf", b"%PDF")])
def test_each_format_is_itself_and_the_same_bytes_twice(tmp_path, ending, start):
    one, other = tmp_path / f"one{ending}", tmp_path / f"other{ending}"
    for path in (one, other):
        write_plan(demo("112A"), path, 180, Display())
    assert one.read_bytes().startswith(start)
    assert one.read_bytes() == other.read_bytes()


def test_a_png_has_the_size_of_its_sheet(tmp_path):
    path = tmp_path / "plan.PNG"
    write_plan(demo("112A"), path, 180, Display())
    width, height = struct.unpack(">II", path.read_bytes()[16:24])
    assert (width, height) == tuple(round(points / 72 * PLAN_DPI) for points in PLAN_SIZE)


def test_angle_units_and_theme_change_the_picture(tmp_path):
    def written(name, angle=180, display=Display(), dark=False):  # noqa: B008 - a frozen record
        write_plan(demo("112A"), tmp_path / name, angle, display, dark)
        return (tmp_path / name).read_bytes()

    pictures = [
        written("a.svg"),
        written("b.svg", angle=90),
        written("c.svg", display=Display(metric=True)),
        written("d.svg", dark=True),
    ]
    assert len(set(pictures)) == 4


def test_another_ending_is_refused_and_nothing_written(tmp_path):
    with pytest.raises(ValueError, match=r"\.png, \.svg, \.pdf; plan\.gif was given"):
        write_plan(demo("112A"), tmp_path / "plan.gif", 180, Display())
    assert list(tmp_path.iterdir()) == []


def test_a_place_that_cannot_be_written_says_so(tmp_path):
    with pytest.raises(OSError):  # noqa: PT011 - which one depends on the system
        write_plan(demo("112A"), tmp_path / "missing" / "plan.svg", 180, Display())


def test_no_date_and_no_machine_in_the_files(tmp_path):
    for ending in (".svg", ".pdf"):
        write_plan(demo("112A"), tmp_path / f"plan{ending}", 180, Display())
        text = (tmp_path / f"plan{ending}").read_bytes()
        assert text.count(b"Date") == text.count(b"Date (D:20000101")  # the library's own, never the clock's
        assert str(tmp_path).encode() not in text


def test_every_format_lies_on_the_tinted_sheet(tmp_path):
    for dark in (False, True):
        write_plan(demo("112A"), tmp_path / "plan.svg", 180, Display(), dark)
        write_plan(demo("112A"), tmp_path / "plan.png", 180, Display(), dark)
        paper = inks()["paper"].on(dark)
        assert f'height="190.5" fill="{paper}"' in (tmp_path / "plan.svg").read_text()
        corner = Image.open(tmp_path / "plan.png").convert("RGB").getpixel((2, 2))
        assert "#{:02x}{:02x}{:02x}".format(*corner) == paper
