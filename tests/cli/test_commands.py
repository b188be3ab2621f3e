"""The command line as a person and as another program use it."""

import json
import os
import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from configurator.cli import commands, main
from configurator.drawing.base.style import materials
from configurator.model.paths import vocabulary
from tests.openings import RAIL, plain_data

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
CONTRACT = [
    "leaf",
    "hinge_width",
    "pin_off_door_face",
    "pin_off_frame_face",
    "pin_across",
    "barrel_past_frame",
    "barrel_past_wall",
    "clear_past_frame_at_180",
    "greatest_angle",
    "stopped_by",
    "contact_point",
    "greatest_angle_bare",
    "stopped_by_bare",
    "clear_width_at_90",
    "clear_width_at_greatest",
    "hardware_in_clear_width",
    "latch_edge_least",
    "hinge_edge_least",
    "encroachment_greatest",
    "encroachment_at_rest",
    "encroachment_with_hardware_greatest",
    "encroachment_with_hardware_at_rest",
    "findings",
]


def write(path: Path, *openings) -> Path:
    path.write_text(json.dumps({"format": "opening-project", "version": 1, "openings": openings}))
    return path


def test_compare_prints_the_contract(capsys):
    assert main(["compare", str(DEMO), "--json"]) == 0
    data = json.loads(capsys.readouterr().out)
    marks = [opening["mark"] for opening in data["openings"]]
    assert marks[:2] == ["101A", "112A"]
    assert len(marks) >= 12
    for opening in data["openings"]:
        assert {"mark", "candidates", "recommended", "findings"} <= set(opening)
        for candidate in opening["candidates"]:
            assert set(CONTRACT) <= set(candidate)
            for finding in (*candidate["findings"], *opening["findings"]):
                assert {"code", "severity", "message", "numbers", "source", "mark_of_source"} <= set(finding)
                assert finding["severity"] in ("error", "warning", "note")
                assert finding["mark_of_source"] in ("read", "common practice", "from memory", "derived")
    wide = data["openings"][1]["candidates"][1]
    assert (wide["hinge_width"], wide["greatest_angle_bare"], wide["stopped_by_bare"]) == (4.5, 180.0, None)


def test_compare_says_what_holds_for_the_whole_job_unless_one_opening_is_asked_for(capsys):
    assert main(["compare", str(DEMO), "--json"]) == 0
    (said,) = json.loads(capsys.readouterr().out)["job_findings"]
    assert said["code"] == "one width would do"
    assert main(["compare", str(DEMO), "--json", "--mark", "112A"]) == 0
    assert json.loads(capsys.readouterr().out)["job_findings"] == []
    assert main(["compare", str(DEMO)]) == 0
    assert "The whole job\n=============\nnote: Hinges 4-1/2 high" in capsys.readouterr().out
    assert main(["compare", str(DEMO), "--mark", "112A"]) == 0
    assert "The whole job" not in capsys.readouterr().out


def test_compare_as_a_table_says_the_difference(capsys):
    assert main(["compare", str(DEMO), "--mark", "112A"]) == 0
    text = capsys.readouterr().out
    assert "171.7°, leaf on the chair rail" in text
    assert "8.2° farther" in text
    assert "Assumed, not given: " in text
    assert "101A" not in text


def test_candidates_come_in_the_order_of_compare(tmp_path, capsys):
    path = write(tmp_path / "job.json", plain_data(compare=[6, 4, 5]))
    assert main(["compare", str(path), "--json"]) == 0
    (opening,) = json.loads(capsys.readouterr().out)["openings"]
    assert [one["hinge_width"] for one in opening["candidates"]] == [6, 4, 5]


def test_strict_exits_with_1_on_an_error(tmp_path, capsys):
    bad = write(tmp_path / "bad.json", plain_data(compare=[7]))
    good = write(tmp_path / "good.json", plain_data(compare=[4], obstructions=[RAIL]))
    assert main(["compare", str(bad), "--json"]) == 0
    assert main(["compare", str(bad), "--json", "--strict"]) == 1
    assert main(["compare", str(good), "--strict"]) == 0
    capsys.readouterr()


def test_a_refused_file_prints_faults_only_on_standard_error(tmp_path, capsys):
    path = write(tmp_path / "job.json", plain_data(door={"thickness": 0}, hand="X"))
    assert main(["compare", str(path), "--json"]) == 2
    printed = capsys.readouterr()
    assert printed.out == ""
    lines = printed.err.splitlines()
    assert [line.split(":")[0] for line in lines] == ["openings[0].hand", "openings[0].door.thickness"]


def test_an_unknown_mark_is_refused(capsys):
    assert main(["compare", str(DEMO), "--mark", "999"]) == 2
    assert "999" in capsys.readouterr().err


def test_kinds_lists_every_word(capsys):
    assert main(["kinds"]) == 0
    text = capsys.readouterr().out
    assert all(word in text for words in vocabulary().values() for word in words)
    assert main(["kinds", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["frame.kind"] == list(vocabulary()["frame.kind"])


@pytest.mark.parametrize(
    ("suffix", "start"), [("png", b"\x89PNG"), ("svg", b"<?xml"), ("pdf", b"%PDF"), ("PNG", b"\x89PNG")]
)
def test_draw_writes_the_plan(tmp_path, capsys, suffix, start):
    path = tmp_path / f"plan.{suffix}"
    assert main(["draw", str(DEMO), "--mark", "112A", "--out", str(path)]) == 0
    assert path.read_bytes().startswith(start)
    assert str(path) in capsys.readouterr().out


def test_draw_shows_what_is_swept_when_asked(tmp_path, capsys):
    plain, swept = tmp_path / "plain.svg", tmp_path / "swept.svg"
    assert main(["draw", str(DEMO), "--mark", "112A", "--out", str(plain)]) == 0
    assert main(["draw", str(DEMO), "--mark", "112A", "--out", str(swept), "--swept"]) == 0
    capsys.readouterr()
    ground = materials()["swept"].ground.light
    assert ground in swept.read_text()
    assert ground not in plain.read_text()


@pytest.mark.parametrize(
    "words",
    [["--out", "plan.bmp"], ["--out", "plan.png", "--angle", "200"], ["--out", "plan.png", "--angle", "nan"]],
)
def test_draw_refuses_in_words(capsys, words):
    assert main(["draw", str(DEMO), "--mark", "112A", *words]) == 2
    assert capsys.readouterr().err.startswith("--")


def test_a_picture_that_cannot_be_written_exits_with_3(tmp_path, capsys):
    path = tmp_path / "nowhere" / "plan.png"
    assert main(["draw", str(DEMO), "--mark", "112A", "--out", str(path)]) == 3
    assert "could not be written" in capsys.readouterr().err
    assert not path.exists()


@pytest.mark.parametrize(
    "words", [["compare", str(DEMO), "--json"], ["kinds"], ["draw", str(DEMO), "--mark", "101A", "--out"]]
)
def test_no_qt_is_imported_without_the_window(tmp_path, words):
    if words[-1] == "--out":
        words = [*words, str(tmp_path / "plan.svg")]
    script = (
        "import sys\nfrom configurator.cli import main\nstatus = main(sys.argv[1:])\n"
        "assert not any(name.split('.')[0] == 'PySide6' for name in sys.modules)\nsys.exit(status)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, *words], capture_output=True, timeout=60, check=False
    )
    assert done.returncode == 0, done.stderr.decode()


def test_with_no_display_the_main_job_is_done_all_the_same(tmp_path):
    hidden = {"DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM"}
    environment = {key: value for key, value in os.environ.items() if key not in hidden}
    done = subprocess.run(
        [sys.executable, "-m", "configurator", str(DEMO)],
        cwd=tmp_path,
        env=environment | {"PYTHONPATH": str(ROOT)},
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr
    assert "display" in done.stderr
    assert "171.7°" in done.stdout
    (picture,) = tmp_path.glob("*.png")
    assert picture.name in done.stdout
    assert picture.read_bytes().startswith(b"\x89PNG")


def test_an_ascii_terminal_does_not_break_the_table(tmp_path):
    done = subprocess.run(
        [sys.executable, "-m", "configurator", "compare", str(DEMO)],
        env=os.environ | {"PYTHONIOENCODING": "ascii"},
        capture_output=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 0, done.stderr.decode()


@pytest.mark.parametrize("mark", ["日本 \U0001f4a5", "=1+1", "a\tb", "\u202eabc"])
def test_any_mark_can_be_drawn(tmp_path, capsys, mark):
    path = write(tmp_path / "job.json", plain_data(mark=mark))
    assert main(["draw", str(path), "--mark", mark, "--out", str(tmp_path / "plan.png")]) == 0
    capsys.readouterr()


def test_a_closed_standard_output_is_said_by_the_status():
    done = subprocess.run(
        ["/bin/sh", "-c", f"'{sys.executable}' -m configurator kinds >&-"],
        capture_output=True,
        text=True,
        timeout=60,
        check=False,
    )
    assert done.returncode == 3
    assert "Traceback" not in done.stderr


def test_a_picture_that_fails_leaves_the_old_one_whole(tmp_path, capsys, monkeypatch):
    path = tmp_path / "plan.png"
    path.write_bytes(b"the old one")

    def full(_handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    assert main(["draw", str(DEMO), "--mark", "112A", "--out", str(path)]) == 3
    assert path.read_bytes() == b"the old one"
    capsys.readouterr()


@pytest.mark.parametrize(
    ("words", "kept"),
    [
        (["order", "job.json", "--prices", "p.csv", "--out", "p.csv"], "p.csv"),
        (["order", "job.csv", "--out", "job.csv"], "job.csv"),
        (["order", "job.json", "--out", "hard.csv"], "hard.csv"),
        (["order", "job.json", "--out", "soft.csv"], "soft.csv"),
        (["schedule", "job.csv", "--out", "./job.csv"], "job.csv"),
        (["draw", "job.pdf", "--all", "--out", "job.pdf"], "job.pdf"),
        (["draw", "job.pdf", "--mark", "112A", "--out", "job.pdf"], "job.pdf"),
        (["import", "p.csv", "--into", "p.csv"], "p.csv"),
    ],
)
def test_nothing_is_written_over_what_is_read(tmp_path, capsys, monkeypatch, words, kept):
    monkeypatch.chdir(tmp_path)
    for name in ("job.json", "job.csv", "job.pdf"):
        Path(name).write_bytes(DEMO.read_bytes())
    Path("p.csv").write_text("height,width,price\n4.5,4,1.00\n")
    os.link("job.json", "hard.csv")
    Path("soft.csv").symlink_to("job.json")
    before = Path(kept).read_bytes()
    assert main(words) == 3
    printed = capsys.readouterr()
    assert "nothing is written over it" in printed.err
    assert printed.out == ""
    assert Path(kept).read_bytes() == before


@pytest.mark.parametrize(
    ("words", "status"),
    [
        (["draw", "--all", "--out", "loop/plan.pdf"], 3),
        (["draw", "--mark", "112A", "--out", "loop/plan.pdf"], 3),
        (["order", "--with-errors", "--freeze", "x" * 2001], 2),
        (["order", "--with-errors", "--freeze", "a\x1b[0m"], 2),
    ],
)
def test_each_failure_has_its_own_status(tmp_path, capsys, monkeypatch, words, status):
    monkeypatch.chdir(tmp_path)
    Path("job.json").write_bytes(DEMO.read_bytes())
    Path("loop").symlink_to("loop")
    assert main([words[0], "job.json", *words[1:]]) == status
    printed = capsys.readouterr()
    assert printed.out == ""
    assert len(printed.err.splitlines()) == 1
    assert printed.err.rstrip("\n").isprintable()
    assert Path("job.json").read_bytes() == DEMO.read_bytes()


def test_a_link_to_itself_as_the_job_is_not_there(tmp_path, capsys, monkeypatch):
    monkeypatch.chdir(tmp_path)
    Path("loop").symlink_to("loop")
    Path("doors.csv").write_text("mark,width,height\n1,3-0,7-0\n")
    assert main(["compare", "loop"]) == 2
    assert main(["import", "doors.csv", "--into", "loop"]) == 2
    assert "Traceback" not in capsys.readouterr().err


def test_a_job_with_a_thousand_revisions_is_not_frozen_again(tmp_path, capsys):
    job = json.loads(DEMO.read_bytes()) | {"revisions": [{"number": 1000}]}
    (tmp_path / "job.json").write_text(json.dumps(job))
    assert main(["order", str(tmp_path / "job.json"), "--freeze", "once more", "--with-errors"]) == 2
    assert "at most 1000; 1001 was given" in capsys.readouterr().err


def test_a_fault_of_the_program_itself_has_a_status_and_words(capsys, monkeypatch):
    monkeypatch.setattr(commands, "vocabulary", lambda: 1 / 0)
    assert main(["kinds"]) == 4
    printed = capsys.readouterr()
    assert printed.out == ""
    assert printed.err.startswith("the program itself failed")
    assert "ZeroDivisionError" in printed.err
    assert str(ROOT) not in printed.err


@pytest.mark.parametrize("digits", ["٣", "-1", "1.5", "x\x1b"])
def test_a_number_of_an_option_is_written_in_plain_digits(capsys, digits):
    with pytest.raises(SystemExit) as left:
        main(["order", str(DEMO), f"--screw-pack={digits}"])
    assert left.value.code == 2
    assert "a whole number is wanted" in capsys.readouterr().err
    assert main(["order", str(DEMO), "--spare", "٣"]) == 2
    assert "is written as 5%" in capsys.readouterr().err


def test_what_goes_to_a_terminal_cannot_turn_or_command_it(tmp_path, capsys):
    path = write(tmp_path / "job.json", plain_data(mark="\u202eabc", location="a\u2066b\u200fc"))
    assert main(["compare", str(path)]) == 0
    text = capsys.readouterr().out
    assert "\\u202eabc" in text
    assert not set(text) & set("\u202e\u2066\u200f\x1b")
    assert main(["compare", str(path), "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["openings"][0]["mark"] == "\u202eabc"
    assert main(["compare", "no\x1b[31mfile\x9b"]) == 2
    assert capsys.readouterr().err == "no\\u001b[31mfile\\u009b is not there\n"


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["draw", "job.json", "--mark", "112A"], "--out: must be given"),
        (["draw", "job.json", "--out", "a.pdf"], "--mark --all: one of them must be given"),
        (["import", "doors.csv"], "--into: must be given"),
        (["compare"], "FILE: must be given"),
        (["compare", "job.json", "--strict=all"], "--strict: invalid choice"),
        (["compare", "job.json", "--mark"], "--mark: expected one argument"),
        (["compare", "job.json", "--swept"], "--swept: there is no such option"),
        (["schema", "roof"], "project|comparison|order|order-changes|schedule|kinds: invalid choice"),
    ],
)
def test_whatever_is_wrong_with_the_options_is_one_line(capsys, words, said):
    with pytest.raises(SystemExit) as left:
        main(words)
    assert left.value.code == 2
    printed = capsys.readouterr()
    (line,) = printed.err.splitlines()
    assert line.startswith(said)
    assert line.endswith("--help shows an example)")
    assert printed.out == ""


def test_every_command_shows_an_example(capsys):
    for command in (*commands.COMMANDS, "window"):
        with pytest.raises(SystemExit):
            main([command, "--help"])
        assert "example: opening-configurator" in capsys.readouterr().out


def test_the_version_is_the_installed_one(capsys):
    with pytest.raises(SystemExit) as left:
        main(["--version"])
    assert left.value.code == 0
    assert re.fullmatch(r"opening-configurator \d+\.\d+\.\d+\n", capsys.readouterr().out)


def test_a_mistyped_command_is_told_from_a_file(tmp_path, capsys, monkeypatch):
    monkeypatch.chdir(tmp_path)
    assert main(["compar", "job.json"]) == 2
    assert capsys.readouterr().err == "there is no command 'compar'; did you mean compare?\n"
    monkeypatch.setattr("configurator.ui.window.environment.why_no_window", lambda: "no display")
    write(Path("compar"), plain_data(mark="Z1"))
    assert main(["compar"]) == 0
    assert "Z1" in capsys.readouterr().out


def test_strict_counts_warnings_where_told_so(tmp_path, capsys):
    warned = write(
        tmp_path / "job.json", plain_data(compare=[4], use={"wanted_angle": 180}, obstructions=[RAIL])
    )
    found = [one["severity"] for one in _findings(warned, capsys)]
    assert "warning" in found
    assert "error" not in found
    assert main(["compare", "--strict", str(warned)]) == 0
    assert main(["compare", "--strict=errors", str(warned)]) == 0
    assert main(["compare", str(warned), "--strict=warnings"]) == 1
    assert main(["order", str(DEMO), "--strict=warnings"]) == 1
    capsys.readouterr()


def _findings(path, capsys):
    assert main(["compare", str(path), "--json"]) == 0
    (opening,) = json.loads(capsys.readouterr().out)["openings"]
    return [*opening["findings"], *(one for each in opening["candidates"] for one in each["findings"])]


def test_compare_in_millimetres(capsys):
    assert main(["compare", str(DEMO), "--mark", "112A", "--metric", "--widths", "--sure"]) == 0
    text = capsys.readouterr().out
    assert "914 x 2134 mm" in text
    assert "Tolerances, plus or minus: frame setting 1.6 mm" in text
    assert " in hinge" in text  # the name of the goods
    assert not re.search(r"\d in(?! hinge)\b", text.split("Least hinge open width")[0])


def _piped(words, data=b""):
    return subprocess.run(
        [sys.executable, "-m", "configurator", *words],
        input=data,
        capture_output=True,
        timeout=60,
        check=False,
    )


def test_a_hyphen_reads_standard_input_and_writes_standard_output():
    done = _piped(["draw", "-", "--mark", "112A", "--out", "-", "--format", "svg"], DEMO.read_bytes())
    assert done.returncode == 0, done.stderr.decode()
    assert done.stdout.startswith(b"<?xml")
    assert done.stderr.decode() == "-: plan of 112A\n"
    done = _piped(["schedule", "-", "--out", "-", "--format", ".csv"], DEMO.read_bytes())
    assert done.stdout.startswith(b'"Document","Door and hardware schedule"')
    done = _piped(["compare", "-", "--json"], b"{}")
    assert (done.returncode, done.stdout) == (2, b"")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["draw", str(DEMO), "--all", "--out", "-"], "--format: must be given"),
        (["order", str(DEMO), "--json", "--out", "-", "--format", "csv"], "--json: goes to standard output"),
        (["order", str(DEMO), "--out", "-", "--format", "bmp"], "--out: must end in"),
        (["order", "-", "--freeze", "x"], "--freeze: keeps the order in the job's own file"),
        (["import", "-", "--into", "job.json"], "a schedule and its job are files"),
        (["import", "doors.csv", "--into", "-"], "a schedule and its job are files"),
    ],
)
def test_what_a_hyphen_cannot_stand_for(capsys, words, said):
    assert main(words) == 2
    assert capsys.readouterr().err.startswith(said)


@pytest.mark.parametrize("shell", commands.SHELLS)
def test_a_shell_is_given_its_completion(capsys, shell):
    assert main(["completion", shell]) == 0
    text = capsys.readouterr().out
    assert all(word in text for word in (*commands.COMMANDS, "--submittal"))


@pytest.mark.skipif(shutil.which("make") is None, reason="a bare Debian has no make")
def test_the_demo_folder_makes_only_what_changed(tmp_path):
    for name in ("Makefile", "pairs_and_dutch.json"):
        (tmp_path / name).write_bytes((DEMO.parent / name).read_bytes())
    program = f"{sys.executable} -m configurator"

    def made(*words):
        asked = ["make", "-C", str(tmp_path), f"CONFIGURATOR={program}", *words]
        done = subprocess.run(asked, capture_output=True, text=True, timeout=60, check=True)
        return done.stdout.count(program)

    assert made("-n") == 12
    names = ["pairs_and_dutch-order.xlsx", "pairs_and_dutch-comparison.txt"]
    assert made(*names) == 2
    assert made(*names) == 0
    os.utime(tmp_path / "pairs_and_dutch.json", (2**31, 2**31))
    assert made(names[0]) == 1
