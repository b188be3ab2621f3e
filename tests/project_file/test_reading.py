"""Project files: written whole or not at all, read with one clear sentence a fault."""

import json
import os
import stat
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from configurator.model import Job
from configurator.project_file import ProjectFileError, dump, load, parse, save
from tests.openings import plain_data
from tests.sweeps import examples

DEMO = Path(__file__).resolve().parents[2] / "demo_openings" / "kestrel_point.json"


def job_bytes(*openings, **top) -> bytes:
    return json.dumps({"format": "opening-project", "version": 1, "openings": list(openings)} | top).encode()


def refusal(data: bytes) -> str:
    with pytest.raises(ProjectFileError) as caught:
        parse(data)
    text = str(caught.value)
    assert all(line.strip() for line in text.splitlines())
    return text


def test_files_we_wrote_come_back_byte_for_byte():
    data = DEMO.read_bytes()
    assert dump(parse(data)) == data


def test_the_contract_example_is_read(tmp_path):
    opening = {
        "mark": "112A", "location": "Crew mess to corridor", "quantity": 1, "status": "assumed",
        "notes": None, "hung_on": "butt hinges", "hand": "RH", "leaves": "single", "active_width": None,
        "split_height": None,
        "size": {"width": 36, "height": "7'-0\""},
        "door": {
            "construction": "hollow metal, 18 gage", "thickness": 1.75, "latch_bevel": 0.0625,
            "hinge_backset": 0.25, "mortise_depth": None, "hinge_gap": 0.125, "latch_gap": 0.125,
            "head_gap": 0.125, "meeting_gap": 0.125, "split_gap": 0.125, "undercut": 0.75, "weight": None,
        },
        "frame": {
            "kind": "knocked-down drywall", "face": 2, "rabbet": 1.9375, "stop_height": 0.625,
            "stop_gap": 0.0625, "jamb_depth": 5.875, "return_depth": 0.5, "hinge_backset": None,
            "mortise_depth": None,
        },
        "wall": {"thickness": 4.875, "layers": None, "frame_proud": None},
        "obstructions": [
            {"kind": "chair rail", "side": "hinge", "projection": 1.75, "start": 0.5, "length": None,
             "offset": 0, "bottom": 32, "top": 36}
        ],
        "hardware": [
            {"kind": "lever", "leaf": None, "face": "pull", "projection": 2.5, "from_latch_edge": 2.75,
             "width": 4, "height": 38, "vertical": 2}
        ],
        "use": {
            "exposure": "interior", "coastal": False, "humid": False, "locked": True, "fire_rated": False,
            "closer": True, "traffic": "average", "accessible": True, "wanted_angle": 180, "stop_angle": None,
            "corridor_width": None, "required_width": None,
        },
        "compare": [4, 4.5],
        "hinge": None,
    }  # fmt: skip
    facts = {"name": "Kestrel Point Ferry Terminal", "number": "26-118", "standard_hinge": None}
    job = parse(job_bytes(opening, job=facts))
    assert job.openings[0].size.height == 84
    first = dump(job)
    assert dump(parse(first)) == first


def test_the_keys_added_to_the_contract_come_back():
    added = {
        "mark": "1",
        "size": {"width": 36, "height": 84},
        "use": {"lock_both_sides": True, "lock_finish_bhma": "626", "clear_width_margin": 0.5},
        "prepared_height": 4.5,
        "existing_hinge": {
            "height": 4.5, "width": 4, "leaf_thickness": 0.134, "corner": "1/4 radius", "count": 3,
            "mounting": "full mortise",
        },
    }  # fmt: skip
    assert json.loads(dump(parse(job_bytes(added))))["openings"] == [added]


def test_left_out_keys_stay_left_out_and_null_means_the_same():
    short = {"mark": "1", "size": "3070"}
    assert json.loads(dump(parse(job_bytes(short))))["openings"] == [
        {"mark": "1", "size": {"width": 36, "height": 84}}
    ]
    nulls = short | {"quantity": None, "frame": None, "obstructions": None, "hinge": None, "compare": None}
    given, left = parse(job_bytes(nulls)).openings[0], parse(job_bytes(short)).openings[0]
    assert given == left


@pytest.mark.parametrize(
    ("change", "path", "words"),
    [
        ({"door": {"thickness": 0}}, "openings[0].door.thickness", "more than 0 and at most 6 in"),
        ({"prepared_height": 0}, "openings[0].prepared_height", "more than 0 and at most 24 in"),
        ({"existing_hinge": {"pin": "x"}}, "openings[0].existing_hinge.pin", "there is no such key"),
        ({"use": {"clear_width_margin": -1}}, "openings[0].use.clear_width_margin", "at least 0"),
        ({"door": {"thickness": -1}}, "openings[0].door.thickness", "-1 was given"),
        ({"door": {"thickness": "thick"}}, "openings[0].door.thickness", "is not a length"),
        ({"door": {"thickness": True}}, "openings[0].door.thickness", "a length is a number"),
        ({"door": {"colour": "red"}}, "openings[0].door.colour", "no such key"),
        ({"size": {"width": 301, "height": 84}}, "openings[0].size.width", "at most 300"),
        ({"size": {"height": None}}, "openings[0].size.height", "must be given"),
        ({"size": "tall"}, "openings[0].size", "opening size"),
        ({"hand": "left"}, "openings[0].hand", "'LH', 'RH', 'LHR' or 'RHR'"),
        ({"frame": {"kind": "paper"}}, "openings[0].frame.kind", "wood with casing"),
        ({"frame": {"kind": "welded steel, butted"}, "wall": {"frame_proud": None}},
         "openings[0].wall.frame_proud", "must be given"),
        ({"wall": {"thickness": 4, "layers": [{"name": "board", "thickness": 3}]}},
         "openings[0].wall", "add up to 3 in"),
        ({"obstructions": [{"kind": "column", "length": 3}]}, "openings[0].obstructions[0]", "not a length"),
        ({"obstructions": [{"kind": "base", "diameter": 3}]}, "openings[0].obstructions[0]", "only a column"),
        ({"obstructions": [{"kind": "base", "projection": 1, "bottom": 4, "top": 4}]},
         "openings[0].obstructions[0]", "top must be higher"),
        ({"obstructions": [{"kind": "return wall", "start": -1}]},
         "openings[0].obstructions[0]", "0 or more"),
        ({"compare": [4, 4]}, "openings[0].compare", "stands twice"),
        ({"compare": [0.5]}, "openings[0].compare", "from 1 to 24"),
        ({"use": {"closer": "yes"}}, "openings[0].use.closer", "true or false"),
        ({"use": {"wanted_angle": 181}}, "openings[0].use.wanted_angle", "at most 180 degrees"),
        ({"quantity": 0}, "openings[0].quantity", "at least 1"),
        ({"quantity": 1.5}, "openings[0].quantity", "whole number"),
        ({"leaves": "pair", "active_width": 36}, "openings[0].active_width", "less than the opening width"),
        ({"leaves": "dutch", "split_height": 84}, "openings[0].split_height", "less than the opening height"),
        ({"mark": "\x1b[2J"}, "openings[0].mark", "control characters"),
        ({"door": {"weight": True}}, "openings[0].door.weight", "number of pounds"),
        ({"hinge": {"screws": {"machine": -1}}}, "openings[0].hinge.screws", "at least 0"),
        ({"door": []}, "openings[0].door", "group of keys"),
        ({"obstructions": {}}, "openings[0].obstructions", "list in brackets"),
    ],
)  # fmt: skip
def test_a_fault_names_its_field_and_what_is_allowed(change, path, words):
    text = refusal(job_bytes(plain_data(**change)))
    assert text.startswith(f"{path}: "), text
    assert words in text
    assert "\x1b" not in text


def test_every_fault_has_its_line():
    bad = plain_data(door={"thickness": 0}, hand="X", size={"width": -1, "height": 84})
    assert len(refusal(job_bytes(bad)).splitlines()) == 3


def test_a_mark_stands_once():
    assert "stands twice" in refusal(job_bytes(plain_data(), plain_data()))


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (b"", "not JSON"),
        (b"{\"format\": \"opening-pro", "breaks off"),
        (b"\xff\xfe\x00binary", "not text"),
        (b"[]", "one group of keys"),
        (b"{}", "format"),
        (b'{"format": "other", "version": 1}', "some other file"),
        (b'{"format": "opening-project"}', "version"),
        (b'{"format": "opening-project", "version": 2, "unheard": 1}', "newer program"),
        (b'{"format": "opening-project", "version": true}', "whole number"),
        (b"[" * 100_000, "nested"),
        (b'{"a":' * 5000 + b"1" + b"}" * 5000, "nested"),
        (b'{"format": "opening-project", "version": 1, "version": 1}', "stands twice"),
        (b'{"format": "opening-project", "version": NaN}', "NaN"),
        (b'{"format": "opening-project", "version": ' + b"9" * 6000 + b"}", "not a project file"),
    ],
)  # fmt: skip
def test_what_is_no_project_file_is_refused_in_words(data, words):
    assert words in refusal(data)


@pytest.mark.parametrize("number", ["1e400", "-1e400"])
def test_a_number_too_large_for_a_float_is_refused(number):
    text = job_bytes(plain_data(door={"thickness": 12345})).replace(b"12345", number.encode())
    assert "openings[0].door.thickness" in refusal(text)


def test_a_number_that_only_just_is_a_float_is_refused_in_words():
    assert "openings[0].location: text is wanted" in refusal(job_bytes(plain_data(location=1e308)))
    assert "“1e+308” is too long" in refusal(job_bytes(plain_data(door={"thickness": 1e308})))


def test_a_file_too_large_is_refused_unread(tmp_path, monkeypatch):
    path = tmp_path / "large.json"
    with path.open("wb") as file:
        file.truncate(200 * 2**20)
    with pytest.raises(ProjectFileError, match="larger than 160 MB"):
        load(path)


def test_a_missing_file_and_a_folder_are_refused(tmp_path):
    with pytest.raises(ProjectFileError, match="is not there"):
        load(tmp_path / "none.json")
    with pytest.raises(ProjectFileError, match="is not a file"):
        load(tmp_path)


def test_a_refused_file_is_never_touched(tmp_path):
    path = tmp_path / "newer.json"
    path.write_bytes(b'{"format": "opening-project", "version": 9}')
    before = path.stat().st_mtime_ns, path.read_bytes()
    with pytest.raises(ProjectFileError):
        load(path)
    assert (path.stat().st_mtime_ns, path.read_bytes()) == before


def test_save_replaces_the_file_and_keeps_its_permissions(tmp_path):
    path = tmp_path / "job.json"
    save(parse(job_bytes(plain_data())), path)
    path.chmod(0o640)
    save(parse(DEMO.read_bytes()), path)
    assert path.read_bytes() == DEMO.read_bytes()
    assert stat.S_IMODE(path.stat().st_mode) == 0o640
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


def test_a_save_that_fails_leaves_the_old_file_whole(tmp_path, monkeypatch):
    path = tmp_path / "job.json"
    save(Job(), path)
    before = path.read_bytes()

    def broken(_handle):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", broken)
    with pytest.raises(ProjectFileError, match=r"job.json could not be saved: no space left"):
        save(parse(DEMO.read_bytes()), path)
    assert path.read_bytes() == before
    assert [one.name for one in tmp_path.iterdir()] == ["job.json"]


@pytest.mark.skipif(os.geteuid() == 0, reason="root may write anywhere")
def test_no_permission_is_said(tmp_path):
    tmp_path.chmod(0o500)
    with pytest.raises(ProjectFileError, match="permission denied"):
        save(Job(), tmp_path / "job.json")


def test_saving_into_a_folder_that_is_not_there_is_said(tmp_path):
    with pytest.raises(ProjectFileError, match="could not be saved"):
        save(Job(), tmp_path / "nowhere" / "job.json")


def test_a_link_is_followed_not_replaced(tmp_path):
    real, link = tmp_path / "real.json", tmp_path / "link.json"
    save(Job(), real)
    link.symlink_to(real)
    save(parse(DEMO.read_bytes()), link)
    assert link.is_symlink()
    assert real.read_bytes() == DEMO.read_bytes()


lengths = st.integers(1, 640).map(lambda n: n / 64)


@examples(25)
@given(
    thickness=st.none() | st.floats(0.5, 3),
    widths=st.lists(lengths.filter(lambda w: 1 <= w <= 9), max_size=4, unique=True),
    notes=st.none() | st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=40),
    projection=lengths,
)
def test_any_job_comes_back_the_same(thickness, widths, notes, projection):
    opening = plain_data(
        door={"thickness": thickness},
        compare=widths,
        notes=notes,
        obstructions=[{"kind": "base", "projection": projection}],
    )
    job = parse(job_bytes(opening))
    assert parse(dump(job)) == job
    assert dump(parse(dump(job))) == dump(job)


@examples(75)
@given(st.binary(max_size=60) | st.text(max_size=60).map(lambda text: text.encode("utf-8", "replace")))
def test_no_bytes_make_it_fail_otherwise(data):
    with pytest.raises(ProjectFileError):
        parse(data)


def test_a_name_too_long_and_a_device_are_refused_in_words(tmp_path):
    with pytest.raises(ProjectFileError, match="could not be saved"):
        save(Job(), tmp_path / ("x" * 300))
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    with pytest.raises(ProjectFileError, match="not an ordinary file"):
        save(Job(), pipe)
    assert stat.S_ISFIFO(pipe.stat().st_mode)


def test_far_too_many_openings_are_refused_before_they_are_read():
    text = refusal(b'{"format": "opening-project", "version": 1, "openings": [' + b"0," * 100_000 + b"0]}")
    assert text == "openings: a job may have up to 100,000 openings; 100,001 were given"


HEAD = b'{"format": "opening-project", "version": 1, '


def bad_openings(count: int) -> bytes:
    one = b'{"mark": "1", "size": "3070", ' + b", ".join(b'"k%d": 1' % key for key in range(100)) + b"}"
    return HEAD + b'"openings": [' + b", ".join([one] * count) + b"]}"


@pytest.mark.parametrize(
    ("data", "words"),
    [
        (HEAD + b'"openings": [{"compare": [' + b"4," * 200_000 + b"4]}]}", "in one list"),
        (HEAD + b'"openings": [{' + b'"a": 1,' * 200_000 + b'"b": 1}]}', "in one list"),
        (HEAD + b'"job": [' + b"[]," * 1_500_001 + b"[]]}", "groups and lists"),
        (HEAD + b", ".join(b'"k%d": 1' % key for key in range(60_000)) + b', "k5": 1}', "'k5' stands twice"),
        (job_bytes(plain_data(compare=["4"] * 90_000)), "up to 12 hinge open widths"),
        (job_bytes(plain_data(wall={"layers": [{}] * 201})), "up to 200 layers"),
        (job_bytes(plain_data(hinge_locations={"tops": [1] * 25})), "up to 24 hinges"),
        (job_bytes(plain_data(hardware=[{}] * 201)), "up to 200 of these"),
    ],
    ids=["values", "keys", "groups", "a key twice", "compare", "layers", "tops", "hardware"],
)
def test_a_small_file_that_would_swell_is_refused_before_it_is_read(data, words):
    assert words in refusal(data)


def test_commas_and_brackets_in_texts_are_no_structure():
    job = parse(job_bytes(plain_data(notes="[{" * 400 + "," * 900 + '\\"[', location="")))
    assert job.openings[0].notes.startswith("[{[{")


@pytest.mark.parametrize(
    ("group", "key", "said"),
    [
        ("sill", "threshold", "is threshold_height or threshold_width meant?"),
        ("door", "thicknes", "is thickness meant?"),
        ("wall", "proud", "is frame_proud meant?"),
        ("door", "zzz", "check its spelling and where it stands"),
        ("door", "", "check its spelling and where it stands"),
    ],
)
def test_an_unknown_key_is_told_with_the_keys_it_is_most_like(group, key, said):
    (line,) = refusal(job_bytes(plain_data(**{group: {key: 1}}))).splitlines()
    assert f"there is no such key; {said}" in line


def test_no_more_than_fifty_faults_are_named_and_the_others_are_counted():
    lines = refusal(bad_openings(3)).splitlines()
    assert (len(lines), lines[-1]) == (51, "and 250 more faults")
    assert (
        lines[0] == "openings[0].k0: there is no such key; check its spelling and where it stands (opening 1)"
    )
    lines = refusal(bad_openings(300)).splitlines()
    assert (len(lines), lines[-1]) == (51, "and more than 9,950 more faults")


def test_faults_of_the_job_of_revisions_and_of_openings_are_told_together():
    data = job_bytes(plain_data(hand="X"), job={"name": 1}, revisions=[{"number": 0}])
    assert [line.split(":")[0] for line in refusal(data).splitlines()] == [
        "revisions[0].number",
        "openings[0].hand",
        "job.name",
    ]


def test_screws_of_a_revision_are_no_number_that_takes_minutes_to_write_out():
    for text in ("1e99999999999", "1/0", "8.5", "-8", "٣", "100000"):
        revision = {"number": 1, "lines": [{"screws": {"machine": text}}]}
        assert "revisions[0].lines[0].screws: screws of one hinge are" in refusal(
            job_bytes(revisions=[revision])
        )


@pytest.mark.parametrize("text", ["\ud800", "\x7f", "\x9b31m", "\x1b[0m"])
def test_what_cannot_be_printed_is_refused_in_words_that_can(text):
    for opening in (plain_data(notes=text), plain_data(door={"thickness": text}), plain_data(size=text)):
        assert refusal(job_bytes(opening)).isprintable()
