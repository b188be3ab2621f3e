"""Two real programs on one file: no edit that was saved is lost, and neither is told what is not so."""

import subprocess
import sys
from pathlib import Path

from configurator.model import Job
from configurator.project_file import load, save

ROOT = Path(__file__).resolve().parents[2]

ADD = """
import random, sys, time
from pathlib import Path
from configurator.model import Opening
from configurator.project_file import ProjectFileError
from configurator.project_file.held import open_held

path, who, many = Path(sys.argv[1]), sys.argv[2], int(sys.argv[3])
added = read_only = 0
while added < many:
    file, job = open_held(path)
    if file.why_not:
        read_only += 1
        time.sleep(random.uniform(0, 0.004))
        continue
    new = Opening.model_validate({"mark": f"{who}{added}", "size": "3070"})
    file.save(job.model_copy(update={"openings": (*job.openings, new)}))
    added += 1
    file.release()
    time.sleep(random.uniform(0, 0.004))
print(read_only)
"""

HOLD = """
import sys
from pathlib import Path
from configurator.project_file.held import open_held
file, job = open_held(Path(sys.argv[1]))
print(file.why_not, flush=True)
for line in sys.stdin:
    file.save(job.model_copy(update={"job": job.job.model_copy(update={"name": line.strip()})}))
    print("saved", flush=True)
file.release()
"""


def program(code: str, *words: object) -> subprocess.Popen[str]:
    command = [sys.executable, "-c", code, *map(str, words)]
    return subprocess.Popen(command, cwd=ROOT, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True)


def test_two_that_add_by_turns_lose_nothing(tmp_path):
    path = tmp_path / "plan.json"
    save(Job.model_validate({"openings": []}), path)
    running = [program(ADD, path, who, 40) for who in "AB"]
    answers = [each.communicate(timeout=60)[0] for each in running]
    assert all(answer.strip().isdigit() for answer in answers)
    marks = {opening.mark for opening in load(path).openings}
    assert marks == {f"{who}{number}" for who in "AB" for number in range(40)}
    assert [each.name for each in tmp_path.iterdir()] == ["plan.json"]


def test_the_second_reads_only_until_the_first_has_gone(tmp_path):
    path = tmp_path / "plan.json"
    save(Job.model_validate({"openings": []}), path)
    first = program(HOLD, path)
    assert first.stdout is not None
    assert first.stdin is not None
    assert first.stdout.readline() == "\n"
    second = program(HOLD, path)
    assert second.stdout is not None
    assert second.stdout.readline().startswith("plan.json is open by ")
    first.stdin.write("Ferry\n")
    first.stdin.flush()
    assert first.stdout.readline() == "saved\n"
    first.communicate(timeout=30)
    second.communicate(timeout=30)
    third = program(HOLD, path)
    assert third.communicate(timeout=30)[0] == "\n"
    assert load(path).job.name == "Ferry"


def test_a_killed_one_leaves_a_lock_that_the_next_is_told_apart(tmp_path):
    path = tmp_path / "plan.json"
    save(Job.model_validate({"openings": []}), path)
    first = program(HOLD, path)
    assert first.stdout is not None
    first.stdout.readline()
    first.kill()
    first.communicate(timeout=30)
    second = program(HOLD, path)
    assert second.communicate(timeout=30)[0].startswith("plan.json is still marked as open by ")
