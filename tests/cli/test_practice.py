from datetime import date

import pytest

from configurator.cli import main
from configurator.practice.course import course
from configurator.practice.progress import Progress, save_progress

pytestmark = pytest.mark.usefixtures("own_state_folder")


def test_a_set_is_written_the_same_each_time(tmp_path, capsys):
    for name in ("a.pdf", "b.pdf"):
        assert (
            main(["practice", "--set", "12", "--level", "1", "--count", "4", "--out", str(tmp_path / name)])
            == 0
        )
    assert (tmp_path / "a.pdf").read_bytes() == (tmp_path / "b.pdf").read_bytes()
    assert "a.pdf: Set 12, level 1, 4 problems" in capsys.readouterr().out


def test_questions_alone_are_less(tmp_path):
    whole, part = tmp_path / "whole.pdf", tmp_path / "part.pdf"
    main(["practice", "--set", "1", "--count", "2", "--out", str(whole)])
    main(["practice", "--set", "1", "--count", "2", "--questions", "--metric", "--out", str(part)])
    assert part.stat().st_size < whole.stat().st_size


def test_progress_is_written_of_somebody_who_practised(tmp_path, capsys):
    progress = (
        Progress("Wren").with_answer(course()[0], False, date(2026, 11, 25)).with_job(1, date(2026, 11, 25))
    )
    save_progress(progress)
    assert main(["practice", "--progress", "Wren", "--out", str(tmp_path / "wren.pdf")]) == 0
    assert (tmp_path / "wren.pdf").read_bytes().startswith(b"%PDF")
    assert main(["practice", "--progress", "Ash", "--out", str(tmp_path / "ash.pdf")]) == 2
    assert "'Ash' has not practised here; Wren did" in capsys.readouterr().err
    assert not (tmp_path / "ash.pdf").exists()


@pytest.mark.parametrize(
    ("more", "said"),
    [
        (["--level", "9"], "--level: is a number from 1 to 5; 9 was given"),
        (["--topic", "cheese"], "--topic: is one of sizes"),
        (["--count", "0"], "--count: is a number from 1 to 40"),
    ],
)
def test_what_there_is_not_is_refused(tmp_path, capsys, more, said):
    assert main(["practice", "--set", "1", *more, "--out", str(tmp_path / "x.pdf")]) == 2
    assert said in capsys.readouterr().err


def test_another_format_is_refused(tmp_path, capsys):
    assert main(["practice", "--set", "1", "--out", str(tmp_path / "x.docx")]) == 2
    assert "must end in .pdf" in capsys.readouterr().err
