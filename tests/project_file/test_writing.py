"""Writing: the same bytes as plain JSON would give, and on the disk whole or not at all."""

import json
import os
import subprocess
import sys
import time
from pathlib import Path

import pytest
from hypothesis import given

from configurator.model import Job
from configurator.project_file import KnownTexts, ProjectFileError, dump, parse, save, writing
from configurator.project_file.writing import LEFT_OVER, sweep, write_whole
from tests.openings import plain_data
from tests.project_file.jobs import jobs
from tests.sweeps import examples


def plainly(job: Job) -> bytes:
    """A job as JSON in the slow and simple way."""
    document = {"format": job.format, "version": job.version, **job.model_dump(exclude_unset=True)}
    return (json.dumps(as_a_person_would(document), indent=2, ensure_ascii=False) + "\n").encode()


def as_a_person_would(value):
    if isinstance(value, float) and value.is_integer():
        return int(value)
    if isinstance(value, dict):
        return {key: as_a_person_would(item) for key, item in value.items()}
    return [as_a_person_would(item) for item in value] if isinstance(value, list | tuple) else value


def job_with(*openings, **facts) -> Job:
    return Job.model_validate({"job": facts, "openings": openings})


def test_a_small_job_is_written_so():
    opening = {"mark": "1", "size": {"width": 36.0, "height": 84.5}, "notes": "36.0,", "compare": []}
    assert dump(job_with(opening, name="Ferry")).decode() == (
        '{\n  "format": "opening-project",\n  "version": 1,\n  "job": {\n    "name": "Ferry"\n  },\n'
        '  "openings": [\n    {\n      "mark": "1",\n      "notes": "36.0,",\n'
        '      "size": {\n        "width": 36,\n        "height": 84.5\n      },\n'
        '      "compare": []\n    }\n  ]\n}\n'
    )


@pytest.mark.parametrize("job", [Job(), Job.model_validate({"openings": []}), job_with(plain_data())])
def test_a_job_with_little_in_it_is_written_as_plain_json(job):
    assert dump(job) == plainly(job)


@pytest.mark.parametrize("length", [1e-5, 1e-7, 1.5e-5, 0.0001, 0.1 + 0.2, 1 / 3, 1.0, 2.50])
def test_any_number_is_written_as_plain_json_writes_it(length):
    job = job_with(plain_data(obstructions=[{"kind": "base", "projection": length}]))
    assert dump(job) == plainly(job)
    assert parse(dump(job)) == job


def test_the_openings_come_last_as_they_are_written():
    assert list(Job.model_fields)[-1] == "openings"


@examples(75)
@given(jobs)
def test_a_file_we_wrote_comes_back_byte_for_byte(job):
    data = dump(job)
    assert data == plainly(job)
    again = parse(data)
    assert again == job
    assert dump(again) == data


@examples(20)
@given(jobs, jobs)
def test_what_was_written_before_never_shows_in_what_is_written_next(one, other):
    known = KnownTexts()
    for job in (one, other, one):
        assert dump(job, known) == dump(job)
    mixed = Job.model_validate({"openings": [plain_data(mark="new"), *one.openings[:1]]})
    assert dump(mixed, known) == dump(mixed)


def test_only_what_changed_is_written_anew(monkeypatch):
    job = job_with(*(plain_data(mark=str(n)) for n in range(5)))
    known = KnownTexts()
    dump(job, known)
    written = []
    monkeypatch.setattr(writing, "_opening_text", lambda each: written.append(each.mark) or "{}")
    changed = job.openings[2].model_copy(update={"notes": "x"})
    dump(job.model_copy(update={"openings": (*job.openings[:2], changed, *job.openings[3:])}), known)
    assert written == ["2"]


def test_a_job_too_large_to_be_opened_again_is_not_saved(tmp_path, monkeypatch):
    monkeypatch.setattr(writing, "LARGEST_FILE", 10)
    with pytest.raises(ProjectFileError, match="could not be opened again"):
        save(Job(), tmp_path / "job.json")
    assert list(tmp_path.iterdir()) == []


def test_a_refusal_at_the_last_moment_leaves_the_old_file(tmp_path):
    path = tmp_path / "job.json"
    path.write_bytes(b"old")

    def refuse():
        parts = [part.read_bytes() for part in tmp_path.glob(".job.json.*.part")]
        raise OSError(f"new is on the disk: {parts}")

    with pytest.raises(OSError, match=r"new is on the disk: \[b'new'\]"):
        write_whole(path, b"new", refuse)
    assert path.read_bytes() == b"old"
    assert [each.name for each in tmp_path.iterdir()] == ["job.json"]


@pytest.mark.parametrize(("age", "stays"), [(LEFT_OVER - 60, True), (LEFT_OVER + 60, False)])
def test_only_old_copies_of_that_file_are_swept(tmp_path, age, stays):
    names = [".job.json.abcd.part", ".other.json.abcd.part", "job.json", ".job.json.txt"]
    for name in names:
        (tmp_path / name).write_bytes(b"")
        then = time.time() - age
        os.utime(tmp_path / name, (then, then))
    sweep(tmp_path, ".job.json.")
    left = {each.name for each in tmp_path.iterdir()}
    assert left == set(names) - (set() if stays else {".job.json.abcd.part"})


def test_the_file_is_on_the_disk_before_it_takes_its_name_and_the_folder_after(tmp_path, monkeypatch):
    done = []
    fsync, replace = os.fsync, Path.replace

    def noted_fsync(handle):
        done.append(Path(f"/proc/self/fd/{handle}").readlink().name)
        fsync(handle)

    def noted_replace(self, target):
        done.append("replace")
        replace(self, target)

    monkeypatch.setattr(os, "fsync", noted_fsync)
    monkeypatch.setattr(Path, "replace", noted_replace)
    save(Job(), tmp_path / "job.json")
    assert done[0].endswith(".part")
    assert done[1:] == ["replace", tmp_path.name]


@pytest.mark.skipif(os.geteuid() != 0, reason="only root gives files away")
def test_the_file_stays_its_owner_s_and_group_s(tmp_path):
    path = tmp_path / "job.json"
    save(Job(), path)
    os.chown(path, 1234, 4321)
    path.chmod(0o664)
    save(job_with(plain_data()), path)
    found = path.stat()
    assert (found.st_uid, found.st_gid, found.st_mode & 0o777) == (1234, 4321, 0o664)


@pytest.mark.parametrize("mask", [0o022, 0o077])
def test_a_new_file_has_the_permissions_that_the_user_s_umask_leaves(tmp_path, mask):
    """In a program of its own: the umask belongs to the whole process, and so must never be changed here."""
    code = (
        "import os, pathlib, stat, sys; os.umask(int(sys.argv[2])); os.umask = None\n"
        "from configurator.project_file.writing import PRIVATE_MODE, write_whole\n"
        "for name, mode in (('usual', {}), ('private', {'mode': PRIVATE_MODE})):\n"
        "    path = pathlib.Path(sys.argv[1], name); write_whole(path, b'new', **mode)\n"
        "    print(stat.S_IMODE(path.stat().st_mode))\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", code, str(tmp_path), str(mask)], capture_output=True, text=True, check=True
    )
    assert [int(line) for line in done.stdout.split()] == [0o666 & ~mask, 0o600]


def test_what_replaces_a_file_is_private_until_it_is_whole(tmp_path, monkeypatch):
    path = tmp_path / "job.json"
    path.write_bytes(b"old")
    path.chmod(0o640)
    modes, fsync = [], os.fsync
    monkeypatch.setattr(os, "fsync", lambda file: (modes.append(os.fstat(file).st_mode & 0o777), fsync(file)))
    write_whole(path, b"new")
    assert modes[0] == 0o600
    assert path.stat().st_mode & 0o777 == 0o640


def test_a_file_with_two_names_keeps_both(tmp_path):
    path, other = tmp_path / "job.json", tmp_path / "other.json"
    save(Job(), path)
    os.link(path, other)
    save(job_with(plain_data()), path)
    assert path.samefile(other)
    assert other.read_bytes() == dump(job_with(plain_data()))
    assert sorted(each.name for each in tmp_path.iterdir()) == ["job.json", "other.json"]


def test_of_a_file_with_two_names_a_whole_copy_stands_beside_it_while_it_is_written(tmp_path, monkeypatch):
    path, fsync, stood = tmp_path / "job.json", os.fsync, []
    save(Job(), path)
    os.link(path, tmp_path / "other.json")
    with monkeypatch.context() as patched:
        patched.setattr(
            os,
            "fsync",
            lambda file: (stood.append([one.read_bytes() for one in tmp_path.glob("*.whole")]), fsync(file)),
        )
        save(job_with(plain_data()), path)
    assert [dump(job_with(plain_data()))] in stood


@pytest.mark.parametrize("name", ["x" * 250, "日" * 83, "é" * 120 + ".json"])
def test_a_name_as_long_as_names_may_be_is_saved(tmp_path, name):
    save(Job(), tmp_path / name)
    assert [each.name for each in tmp_path.iterdir()] == [name]
