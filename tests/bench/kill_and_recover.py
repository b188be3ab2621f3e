"""Kill the program at any moment of an edit-and-save loop and see what is left.

Run it as `python tests/bench/kill_and_recover.py [RUNS] [SECONDS]`. Each run is a process of its own that
edits and saves a job as the window does; it is killed (kill -9) at a random moment within SECONDS, half of
the runs without ever saving. Then the file on disk must be whole, the last save that was reported must be
in it, and the work recovered may lack no edit older than ten seconds. Returns 1 when a run fails.
"""

import os
import random
import signal
import statistics
import subprocess
import sys
import tempfile
import time
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from threading import Lock as ThreadLock

ROOT = Path(__file__).resolve().parents[2]
DEMO = ROOT / "demo_openings" / "kestrel_point.json"
if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))

MOST_LOST = 10.0
AT_ONCE = 4
EDIT_EVERY_MS = 20
_one_looks = ThreadLock()


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one killed run left: numbers of edits, seconds lost, and what is wrong; empty when nothing is."""

    edits: int
    on_disk: int
    recovered: int
    seconds_lost: float
    wrong: str


def work(path: Path, saving: float, seed: int) -> None:
    """Edit and save until killed, telling each step; `saving` is the chance of a save after an edit."""
    from PySide6.QtCore import QCoreApplication, QTimer

    from configurator.ui.files.keeping import Keeping
    from configurator.ui.state.session import Session

    application = QCoreApplication([])
    session = Session(studier=lambda *_: None)
    session.open(path)
    keeping = Keeping(session, lambda _: None, lambda trouble: tell("trouble", trouble))
    chance = random.Random(seed)
    edits = 0

    def edit() -> None:
        nonlocal edits
        edits += 1
        session.edit("location", f"edit {edits}")
        tell("edit", edits)
        if chance.random() < saving:
            session.save()
            tell("saved", edits)

    timer = QTimer()
    timer.timeout.connect(edit)
    timer.start(EDIT_EVERY_MS)
    tell("ready", 0)
    application.exec()
    keeping.close()


def tell(what: str, number: object) -> None:
    """Say what was done, and when on the clock that all processes share."""
    print(what, number, time.monotonic(), flush=True)


def killed_run(seed: int, seconds: float) -> Outcome:
    """Start the loop, kill it at a random moment and look at what it left."""
    chance = random.Random(seed)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        path = folder / "job.json"
        path.write_bytes(DEMO.read_bytes())
        saving = 0.0 if seed % 2 else chance.choice((0.01, 0.2))
        told, killed = _work_until_killed(folder, path, saving, chance.uniform(0, seconds))
        with _one_looks:
            return _looked_at(folder, path, told, killed)


def _work_until_killed(
    folder: Path, path: Path, saving: float, after: float
) -> tuple[list[tuple[str, int, float]], float]:
    command = [sys.executable, __file__, "--work", path, str(saving), "1"]
    home = {"XDG_STATE_HOME": str(folder / "state"), "PYTHONPATH": str(ROOT)}
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True, env=os.environ | home) as process:
        assert process.stdout is not None
        assert process.stdout.readline().startswith("ready"), "the loop did not begin"
        time.sleep(after)
        killed = time.monotonic()
        process.send_signal(signal.SIGKILL)
        lines = process.stdout.read().splitlines(keepends=True)
    whole = (line.split() for line in lines if line.endswith("\n"))
    return [(what, int(number), float(when)) for what, number, when in whole], killed


def _looked_at(folder: Path, path: Path, told: list[tuple[str, int, float]], killed: float) -> Outcome:
    from configurator.project_file import ProjectFileError, load
    from configurator.project_file.recovery import left_behind

    os.environ["XDG_STATE_HOME"] = str(folder / "state")
    edits = {number: when for what, number, when in told if what == "edit"}
    saved = max((number for what, number, _ in told if what == "saved"), default=0)
    try:
        on_disk = _number(load(path))
    except ProjectFileError as error:
        return Outcome(len(edits), -1, -1, 0, f"the file is broken: {error}")
    found = left_behind()
    recovered = max([on_disk, *(_number(left.job()) for left in found)])
    first_lost = edits.get(recovered + 1)
    lost = killed - first_lost if first_lost is not None else 0.0
    return Outcome(len(edits), on_disk, recovered, lost, _wrong(path, saved, on_disk, lost))


def _wrong(path: Path, saved: int, on_disk: int, lost: float) -> str:
    """Say what is wrong; the recovery itself is tried in the same way as the window does it."""
    from configurator.project_file.lock import holder_of
    from configurator.project_file.recovery import left_behind
    from configurator.ui.state.session import Session

    if on_disk < saved:
        return f"edit {saved} was told to be saved, but the file holds {on_disk}"
    if lost > MOST_LOST:
        return f"{lost:.1f} s of edits are gone"
    holder = holder_of(path)
    if holder is None or not holder.stale():
        return "the lock of the killed program is not told apart"
    session = Session(studier=lambda *_: None)
    for left in left_behind():
        session.recover(left.job(), left.path, left.based_on)
        if session.path != path.resolve() or session.read_only:
            return f"the recovered work cannot be saved: {session.read_only or session.path}"
        left.forget()
    session.let_go()
    return ""


def _number(job: object) -> int:
    location = job.openings[0].location or ""  # type: ignore[attr-defined]
    return int(location.removeprefix("edit ")) if location.startswith("edit ") else 0


def main(runs: int, seconds: float) -> int:
    """Kill so many runs and print the figures; return 1 when one of them failed."""
    with ThreadPoolExecutor(AT_ONCE) as several:
        outcomes = list(several.map(lambda seed: killed_run(seed, seconds), range(runs)))
    lost = [outcome.seconds_lost for outcome in outcomes]
    wrong = [outcome.wrong for outcome in outcomes if outcome.wrong]
    print(f"{runs} runs killed within {seconds:g} s, {sum(outcome.edits for outcome in outcomes):,} edits")
    print(f"broken or old files, late or missing recoveries: {len(wrong)}")
    print(f"seconds of edits lost: median {statistics.median(lost):.2f}, most {max(lost):.2f}")
    recovered = sum(outcome.recovered > outcome.on_disk for outcome in outcomes)
    print(f"runs whose recovery had more than the file: {recovered}")
    for each in wrong:
        print(f"  {each}")
    return int(bool(wrong))


if __name__ == "__main__":
    if sys.argv[1:2] == ["--work"]:
        work(Path(sys.argv[2]), float(sys.argv[3]), int(sys.argv[4]))
    else:
        count, longest = [*sys.argv[1:], *("200", "14")[len(sys.argv) - 1 :]]
        sys.exit(main(int(count), float(longest)))
