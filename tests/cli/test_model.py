"""Building models on the command line: taken, taken again when newer, written back; what is refused."""

import sys
import zipfile

import pytest

from configurator.building import apart
from configurator.building.library import MISSING
from configurator.building.reading import read_model
from configurator.cli import main
from configurator.project_file import load, save
from tests.building.author import Author, turned
from tests.building.conftest import LAYERS, terminal  # noqa: F401 - the fixture

ANSWERS = ("overall size=opening", "outside=push", "no hinged door=leave out", "no opening=leave out")
SAID = [word for answer in ANSWERS for word in ("--answer", answer)]


@pytest.fixture
def ran(capsys, monkeypatch):
    """Run a command; the model is read in this process, which is quicker than in one of its own."""
    monkeypatch.setattr(apart, "read_apart", read_model)

    def run(*words):
        status = main([str(word) for word in words])
        out, err = capsys.readouterr()
        return status, out, err

    return run


def small(tmp_path, *doors, schema="IFC4", rail=False, name="model.ifc"):
    """A wall with doors: mark, width and, of the same door later, its global id."""
    author = Author(schema, "inch")
    wall = author.wall(turned(0, 0), 900, LAYERS)
    for number, (mark, width, key) in enumerate(doors):
        made = author.door(
            wall, turned(100 + 150 * number, 0), width, 84, tag=mark, frame=(0.0, 5.25), leaf=(3.5, 5.25)
        )
        if key:
            made.GlobalId = key
    if rail:
        author.thing("IfcRailing", "Chair rail", [author.box(60, 97, 4.75, 6.5, 32, 36)])
    return author.write(tmp_path / name)


A, B, C = ("0" * 21 + letter for letter in "ABC")


def test_a_model_is_asked_about_then_taken_and_is_the_same_the_next_time(ran, terminal, tmp_path):  # noqa: F811
    job = tmp_path / "job.json"
    status, _, err = ran("import", terminal, "--into", job)
    assert status == 2
    assert "4 rows, Width (mm): 914.4 overall: say what the overall size is of" in err
    assert "(doors 112A, 113, 114 and 115)" in err
    assert "“sliding door” is a sliding door" in err
    assert "it stands in no opening of a wall" in err
    assert not job.exists()
    status, out, err = ran("import", terminal, "--into", job, *SAID)
    assert (status, err) == (0, "")
    assert "terminal.ifc: 4 doors; 2 good (2 new), 2 left out" in out
    opening = load(job).openings[0]
    assert (opening.mark, opening.hand, len(opening.obstructions)) == ("112A", "LH", 1)
    assert "the job already says what the model says" in ran("import", terminal, "--into", job, *SAID)[1]


def test_a_newer_model_is_compared_by_global_id(ran, tmp_path):
    job = tmp_path / "job.json"
    first = small(tmp_path, ("101", 36, A), ("102", 36, B), ("103", 36, C), rail=True)
    assert ran("import", first, "--into", job, *SAID)[0] == 0
    typed = load(job)
    bumper = {"kind": "base", "side": "hinge"}
    kept = typed.openings[0].model_copy(
        update={
            "obstructions": (
                *typed.openings[0].obstructions,
                type(typed.openings[0].obstructions[0])(**bumper),
            )
        }
    )
    save(typed.model_copy(update={"openings": (kept, *typed.openings[1:])}), job)
    later = small(tmp_path, ("101", 36, A), ("105", 40, B), ("104", 36, ""), name="later.ifc")
    status, out, _ = ran("import", later, "--into", job, *SAID)
    assert status == 0
    assert "changed: 105: opening width 36 in → 40 in; mark 102 → 105" in out or "mark 102 → 105" in out
    assert "in the job but not in the model, kept: 103" in out
    assert "new: 104" in out
    openings = {one.mark: one for one in load(job).openings}
    assert openings.keys() == {"101", "105", "103", "104"}
    assert openings["105"].size.width == 40
    # The rail is gone from the model; what was typed stays.
    assert [one.kind for one in openings["101"].obstructions] == ["base"]


def test_two_doors_of_one_mark_are_named(ran, tmp_path):
    status, _, err = ran(
        "import", small(tmp_path, ("101", 36, A), ("101", 36, B)), "--into", tmp_path / "j.json", *SAID
    )
    assert status == 2
    assert "the mark 101 has another door too" in err


def test_a_model_and_a_schedule_are_set_against_one_another(ran, tmp_path):
    schedule = tmp_path / "doors.csv"
    schedule.write_text("Mark,Width,Height,Hand\n101,34,84,LH\n900,36,84,RH\n")
    model = small(tmp_path, ("101", 36, A), ("102", 36, B))
    words = ("import", model, "--into", tmp_path / "j.json", "--dry-run", "--against", schedule, *SAID)
    lines = [line for line in ran(*words)[1].splitlines() if line.startswith("against")]
    assert lines == [
        "against doors.csv: 101: opening width 36 in in the model, 34 in in doors.csv",
        "against doors.csv: 102: in the model, not in doors.csv",
        "against doors.csv: 900: in doors.csv, not in the model",
    ]
    assert ran("import", schedule, "--into", tmp_path / "j.json", "--against", model)[0] == 2


def test_hinges_and_findings_go_back(ran, terminal, tmp_path):  # noqa: F811
    job, copy, topics = tmp_path / "job.json", tmp_path / "copy.ifc", tmp_path / "x.bcf"
    ran("import", terminal, "--into", job, *SAID)
    status, out, err = ran("export-model", job, "--model", terminal, "--out", copy)
    assert (status, err) == (0, "")
    assert out.splitlines()[0].endswith("hinges on 2 doors")
    assert {door.tag for door in read_model(copy).doors} == {"112A", "113", "114", "115"}
    status, out, _ = ran("topics", job, "--model", terminal, "--out", topics, "--notes")
    assert (status, "about 2 doors" in out) == (0, True)
    assert zipfile.is_zipfile(topics)
    assert "nothing is written over it" in ran("export-model", job, "--model", copy, "--out", copy)[2]
    assert ".ifc" in ran("export-model", job, "--model", copy, "--out", tmp_path / "copy.txt")[2]


def test_a_job_without_a_model_says_so(ran, terminal, tmp_path):  # noqa: F811
    job = tmp_path / "job.json"
    (tmp_path / "d.csv").write_text("Mark,Width,Height\n1,36,84\n")
    ran("import", tmp_path / "d.csv", "--into", job)
    status, _, err = ran("export-model", job, "--model", terminal, "--out", tmp_path / "x.ifc")
    assert (status, "import the model first" in err) == (2, True)


BAD = {
    "cut.ifc": (lambda data: data[:3000], "cut.ifc is cut short: its end is missing"),
    "schema.ifc": (
        lambda data: data.replace(b"IFC4", b"IFC9"),
        "schema.ifc: its schema IFC9 is not read; IFC2X3, IFC4, IFC4X3 are",
    ),
    "text.ifc": (
        lambda data: b"Doors of Kestrel Point",
        "text.ifc is no IFC file: it does not begin with ISO-10303-21",
    ),
    "empty.ifc": (lambda data: b" \n", "empty.ifc is empty"),
    "units.ifc": (
        lambda data: data.replace(b"IFCREAL(0.0254)", b"IFCREAL(25.4)"),
        "units.ifc: half of its doors are 3.6e+04 in wide or more, so that the length "
        "unit of the file is wrong",
    ),
    "nodoor.ifc": (lambda data: data.replace(b"IFCDOOR(", b"IFCWINDOW("), "nodoor.ifc has no door in it"),
}  # fmt: skip


@pytest.mark.parametrize("name", BAD)
def test_bad_input_is_one_sentence_and_nothing_is_written(name, ran, tmp_path):
    spoil, sentence = BAD[name]
    path, job = tmp_path / name, tmp_path / "job.json"
    path.write_bytes(spoil(small(tmp_path, ("101", 36, A)).read_bytes()))
    status, out, err = ran("import", path, "--into", job, *SAID)
    assert (status, out, err.splitlines()) == (2, "", [sentence])
    assert not job.exists()


def test_a_damaged_file_is_read_and_what_is_lost_is_told(ran, tmp_path):
    path = small(tmp_path, ("101", 36, A), rail=True)
    lines = path.read_text().splitlines()
    rail = next(number for number, line in enumerate(lines) if "IFCRAILING(" in line)
    path.write_text("\n".join([*lines[:rail], *lines[rail + 1 :]]))
    status, out, _ = ran("import", path, "--into", tmp_path / "job.json", *SAID)
    assert status == 0
    assert "of its entities cannot be read: it is damaged" in out


def test_a_zip_and_a_file_that_is_not_there(ran, tmp_path):
    with zipfile.ZipFile(tmp_path / "model.ifczip", "w") as archive:
        archive.writestr("model.ifc", "ISO-10303-21;")
    into = ("--into", tmp_path / "job.json")
    assert "take the .ifc file out of it first" in ran("import", tmp_path / "model.ifczip", *into)[2]
    assert ran("import", tmp_path / "none.ifc", *into)[2] == "none.ifc is not there\n"


def test_a_door_without_a_shape_is_read_and_one_without_a_size_is_named(ran, tmp_path):
    author = Author("IFC4", "inch")
    wall = author.wall(turned(0, 0), 600, LAYERS)
    author.door(wall, turned(100, 0), 36, 84, tag="101", body=False)
    bare = author.door(wall, turned(300, 0), 36, 84, tag="102", body=False)
    bare.OverallWidth = None
    path = author.write(tmp_path / "model.ifc")
    status, _, err = ran("import", path, "--into", tmp_path / "job.json", *SAID)
    assert status == 2
    assert "door 102, Width (in): it has no overall width, and no shape" in err
    assert ran("import", path, "--into", tmp_path / "job.json", "--take-good", *SAID)[0] == 0
    assert [one.mark for one in load(tmp_path / "job.json").openings] == ["101"]


def test_without_the_library_every_way_in_says_how_to_get_it(capsys, terminal, tmp_path, monkeypatch):  # noqa: F811
    job = tmp_path / "job.json"
    model = small(tmp_path, ("101", 36, A))
    with monkeypatch.context() as patched:
        patched.setattr(apart, "read_apart", read_model)
        assert main(["import", str(model), "--into", str(job), *SAID]) == 0
    capsys.readouterr()
    monkeypatch.setitem(sys.modules, "ifcopenshell", None)
    for words in (
        ("import", model, "--into", job, *SAID),
        ("export-model", job, "--model", model, "--out", tmp_path / "x.ifc"),
        ("topics", job, "--model", model, "--out", tmp_path / "x.bcf"),
    ):
        assert main([str(word) for word in words]) == 2
        assert capsys.readouterr().err == f"{MISSING}\n"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["job.json", "model.ifc"]


def test_a_model_is_read_in_a_process_of_its_own(capsys, tmp_path):
    """The process itself, once: what it reads, and what it refuses."""
    job = tmp_path / "job.json"
    assert main(["import", str(small(tmp_path, ("101", 36, A), rail=True)), "--into", str(job), *SAID]) == 0
    assert len(load(job).openings[0].obstructions) == 1
    (tmp_path / "none.ifc").write_bytes(b"ISO-10303-21;\nHEADER;\nEND-ISO-10303-21;\n")
    capsys.readouterr()
    assert main(["import", str(tmp_path / "none.ifc"), "--into", str(job)]) == 2
    assert capsys.readouterr().err.startswith("none.ifc")
