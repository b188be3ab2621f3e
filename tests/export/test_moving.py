"""The client's moving picture, read back frame by frame."""

import itertools
from io import BytesIO

import numpy as np
import pytest
from PIL import Image

from configurator.cli import main
from configurator.drawing.base.style import inks
from configurator.export.figure import MOVING_SIZE, gif_bytes
from configurator.units import Display
from tests.drawing.cases import demo


@pytest.fixture(scope="module")
def frames():
    """Every frame of 112A's swing, and how long each is shown, milliseconds."""
    found = []
    with Image.open(BytesIO(gif_bytes(demo("112A"), Display()))) as moving:
        for number in range(moving.n_frames):
            moving.seek(number)
            found.append((np.asarray(moving.convert("RGB"), int), moving.info["duration"]))
    return found


def changed(one, other):
    return int((abs(one - other).sum(axis=2) > 60).sum())


def test_every_frame_is_of_one_size_and_the_door_moves_from_each_to_the_next(frames):
    assert {image.shape for image, _ in frames} == {(int(MOVING_SIZE[1]), int(MOVING_SIZE[0]), 3)}
    pairs = itertools.pairwise(image for image, _ in frames[5:-5])
    assert all(changed(one, other) > 0 for one, other in pairs)


def test_the_last_frame_stays_to_be_read(frames):
    assert frames[-1][1] > 20 * frames[0][1]


def test_what_touches_lights_up_at_the_end_only(frames):
    """Its red stands in the picture of the 4 in hinge, above the verdict's own."""
    red = np.array([int(inks()["warning"].light[at : at + 2], 16) for at in (1, 3, 5)])
    count = [int((abs(image[30:410, :480] - red).sum(axis=2) < 60).sum()) for image, _ in frames]
    assert count[0] == count[len(frames) // 2] == 0
    assert count[-1] > 50


def test_it_is_written_by_its_ending_and_by_no_other_sheet(tmp_path, capsys):
    job = "demo_openings/kestrel_point.json"
    path = tmp_path / "112A.gif"
    assert main(["draw", job, "--mark", "112A", "--out", str(path)]) == 0
    assert path.read_bytes()[:6] == b"GIF89a"
    for more in (["--sheet", "prep"], ["--angle", "30"], ["--scale", "3"]):
        assert main(["draw", job, "--mark", "112A", *more, "--out", str(tmp_path / "no.gif")]) == 2
        assert "moving picture" in capsys.readouterr().err
    assert not (tmp_path / "no.gif").exists()
