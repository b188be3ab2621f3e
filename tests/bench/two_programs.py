"""Two windows and the command line write one file by turns, and one of them is killed again and again.

    python tests/bench/two_programs.py [--rounds 500] [--seed N]

Each window opens the job, adds an opening, saves, and often lets the file go; where another has it, it waits,
and takes over a lock only from one that was killed. The command line imports an opening more, again and
again. A round ends with a kill (kill -9) of one of the three at a random moment. Then the file must read as a
job, with every opening in it that any of them was told is saved. The windows are sessions as windows have
them, without the painting. Returns 1 when an opening is lost or the file is torn.
"""

import argparse
import contextlib
import io
import os
import random
import signal
import subprocess
import sys
import tempfile
import time
from collections import Counter
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
if __name__ == "__main__":
    sys.path.insert(0, str(ROOT))

WHO = ("first", "second", "command")
NEW_FILE = 25
"""Rounds after which a new job is begun, so that it stays small."""
EVERY_MS = 10
LONGEST_ROUND = 0.6
SILENT = 60.0
"""Seconds after which three programs that save nothing count as hung."""


# --- The programs ---


def tell(log: Path, mark: str) -> None:
    """Note an opening that was saved, in one write."""
    handle = os.open(log, os.O_WRONLY | os.O_APPEND | os.O_CREAT)
    os.write(handle, f"{mark}\n".encode())
    os.close(handle)


def use_window(path: Path, log: Path, who: str, seed: int) -> None:
    """Open, add, save and let go, again and again, as a window does; does not return."""
    from PySide6.QtCore import QCoreApplication, QTimer

    from configurator.model import Opening
    from configurator.ui.state.session import Session

    application = QCoreApplication([])
    session = Session(studier=lambda *_: None)  # type: ignore[arg-type]
    chance = random.Random(seed)

    def step() -> None:
        if session.file is None:
            session.open(path)
        if session.read_only:
            holder = session.file.holder if session.file else None
            if holder is None or not holder.stale():
                session.let_go()
                return
            session.take_over()
            if session.read_only:
                session.let_go()
                return
            session.open(path)  # what the killed one saved after we had read it
        mark = f"{who}-{seed}-{len(session.job.openings)}"
        new = Opening.model_validate({"mark": mark, "size": "3070"})
        session.take_openings((*session.job.openings, new), f"add {mark}", mark)
        session.save()
        tell(log, mark)
        if chance.random() < 0.8:
            session.let_go()

    timer = QTimer()
    timer.timeout.connect(step)
    timer.start(EVERY_MS)
    application.exec()


def use_command(path: Path, log: Path, who: str, seed: int) -> None:
    """Import an opening more, again and again; does not return."""
    from configurator.cli import main

    schedule = log.with_suffix(".csv")
    for number in range(10**9):
        mark = f"{who}-{seed}-{number}"
        schedule.write_text(f"Mark,Size,Hand\n{mark},3070,RH\n", "utf-8")
        said = io.StringIO()
        with contextlib.redirect_stdout(said), contextlib.redirect_stderr(said):
            status = main(["import", str(schedule), "--into", str(path)])
        if status == 0:
            tell(log, mark)
        elif not any(
            words in said.getvalue() for words in ("is open by", "marked as open", "was taken over")
        ):
            tell(log, f"! status {status}: {said.getvalue()[-300:]!r}")
        time.sleep(0.005)


# --- The rounds ---


class Trial:
    """Three programs on one file, and what they were told is saved."""

    def __init__(self, folder: Path, seed: int) -> None:
        from configurator.model import Job
        from configurator.project_file import save

        self.path, self.log = folder / "job.json", folder / "saved.log"
        save(Job.model_validate({"openings": []}), self.path)
        self.log.touch()
        self._seed = seed * 1000
        self._running = {who: self._begun(who) for who in WHO}

    def _begun(self, who: str) -> subprocess.Popen[bytes]:
        self._seed += 1
        own = os.environ | {"PYTHONPATH": str(ROOT), "XDG_STATE_HOME": str(self.path.parent / "state")}
        words = [
            sys.executable,
            __file__,
            "--as",
            who,
            str(self.path),
            str(self.log.with_name(who)),
            str(self._seed),
        ]
        return subprocess.Popen(words, env=own, stderr=subprocess.PIPE)

    def saved(self) -> list[str]:
        """Return every opening that a program was told is saved."""
        logs = [self.log.with_name(who) for who in WHO]
        return [line for log in logs if log.exists() for line in log.read_text("utf-8").splitlines()]

    def kill(self, who: str) -> str:
        """Kill a program at once; return what is wrong with the file then, and begin the program anew."""
        process = self._running[who]
        process.send_signal(signal.SIGKILL)
        _, complained = process.communicate()
        wrong = "" if process.returncode == -signal.SIGKILL else f"{who} ended: {complained.decode()[-600:]}"
        wrong = wrong or self.wrong()
        self._running[who] = self._begun(who)
        return wrong

    def wrong(self) -> str:
        """Say what is wrong with the file now, while the others go on; empty when nothing is."""
        from configurator.project_file import ProjectFileError, load

        saved = self.saved()
        if complaints := [line for line in saved if line.startswith("!")]:
            return complaints[0]
        try:
            marks = {opening.mark for opening in load(self.path).openings}
        except ProjectFileError as error:
            return f"the file is torn: {error}"
        lost = [mark for mark in saved if mark not in marks]
        return f"{len(lost)} of {len(saved)} openings are lost: {lost[:5]}" if lost else ""

    def end(self) -> str:
        """Kill what still runs, and say what is wrong with the file."""
        for process in self._running.values():
            process.kill()
            process.communicate()
        return self.wrong()


def rounds(count: int, seed: int, quickly: float = LONGEST_ROUND) -> tuple[Counter[str], list[str]]:
    """Play so many rounds; return how often each was killed and saved, and all that went wrong."""
    chance = random.Random(seed)
    told, wrong = Counter[str](), list[str]()
    for begun in range(0, count, NEW_FILE):
        with tempfile.TemporaryDirectory(prefix="two-programs-") as folder:
            trial = Trial(Path(folder), seed * 100 + begun)
            for _ in range(min(NEW_FILE, count - begun)):
                _wait_for_more(trial)
                time.sleep(chance.uniform(0, quickly))
                who = chance.choice(WHO)
                told[f"{who} killed"] += 1
                wrong += filter(None, [trial.kill(who)])
            wrong += filter(None, [trial.end()])
            told.update(f"{mark.partition('-')[0]} saved" for mark in trial.saved())
    return told, wrong


def _wait_for_more(trial: Trial) -> None:
    """Wait until something was saved since the last kill: a program needs its time to begin."""
    before, began = len(trial.saved()), time.monotonic()
    while len(trial.saved()) == before and time.monotonic() - began < SILENT:
        time.sleep(0.02)


def main() -> int:
    """Play the rounds and print what was saved and lost."""
    asked = argparse.ArgumentParser(description=__doc__.partition("\n")[0])
    asked.add_argument("--rounds", type=int, default=500)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--as", nargs=4, dest="program", help=argparse.SUPPRESS)
    given = asked.parse_args()
    if given.program:
        who, path, log, seed = given.program
        (use_command if who == "command" else use_window)(Path(path), Path(log), who, int(seed))
    told, wrong = rounds(given.rounds, given.seed)
    print(f"{given.rounds} rounds, {len(wrong)} wrong")
    print(*(f"  {count:6,} {what}" for what, count in sorted(told.items())), sep="\n")
    print(*(f"  {each}" for each in wrong[:10]), sep="\n")
    return int(bool(wrong))


if __name__ == "__main__":
    sys.exit(main())
