"""A building model read in a process of its own: the caller stays alive, can stop it, and keeps its memory.

The library holds Python's lock while it opens a file, and a damaged file may end the process that reads it:
here that is one sentence. The process writes lines, `P done total` or `E sentence`, and last `R size` with
the records.
"""

import os
import pickle
import subprocess
import sys
from importlib.util import find_spec
from pathlib import Path
from queue import Empty, SimpleQueue
from threading import Thread
from typing import IO, Any

from configurator.building.library import MISSING
from configurator.building.records import BuildingModel
from configurator.intake.sheet import IntakeError
from configurator.long_work import Progress, unwatched

_LOOKED_AFTER = 0.1
"""Seconds between two looks at the process, while it says nothing."""
_TOLD_EVERY = 20


def is_model(path: Path) -> bool:
    """Say whether a file is meant as a building model, by its name or by how it begins."""
    if path.suffix.casefold() in (".ifc", ".ifczip", ".ifcxml"):
        return True
    try:
        with path.open("rb") as file:
            return file.read(40).lstrip().startswith(b"ISO-10303-21;")
    except OSError:
        return False


def lacking() -> str:
    """Say how to get the library that reads models where it is not installed; empty where it is."""
    return MISSING if find_spec("ifcopenshell") is None else ""


def read_apart(path: Path, progress: Progress = unwatched) -> BuildingModel:
    """Return what a building model has of doors, read in another process.

    Raises IntakeError with a sentence, and Cancelled as the progress does.
    """
    if sentence := lacking():
        raise IntakeError(sentence)
    command = [sys.executable, "-m", "configurator.building.apart", str(path)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL) as process:
        assert process.stdout is not None
        lines: SimpleQueue[Any] = SimpleQueue()
        reader = Thread(target=_listen, args=(process.stdout, lines), daemon=True)
        reader.start()
        try:
            return _result(path, lines, progress)
        finally:
            process.kill()
            reader.join()


def _listen(pipe: IO[bytes], lines: "SimpleQueue[Any]") -> None:
    """Put what a process says into a queue, and None once it has ended."""
    for line in pipe:
        kind, _, rest = line.partition(b" ")
        lines.put((kind, pipe.read(int(rest)) if kind == b"R" else rest))
    lines.put(None)


def _result(path: Path, lines: "SimpleQueue[Any]", progress: Progress) -> BuildingModel:
    done, total = 0, 0
    while True:
        progress(done, total)
        try:
            said = lines.get(timeout=_LOOKED_AFTER)
        except Empty:
            continue
        if said is None:
            raise IntakeError(f"{path.name} could not be read to its end: it is damaged, or memory ran out")
        kind, rest = said
        if kind == b"E":
            raise IntakeError(rest.decode().strip())
        if kind == b"R":
            model: BuildingModel = pickle.loads(rest)  # our own process has written it
            return model
        done, total = map(int, rest.split())


def main() -> None:
    """Read the model that the command line names, and write what came of it."""
    from configurator.building.reading import read_model

    # What the library itself prints must not stand among our lines.
    out = os.fdopen(os.dup(1), "wb")
    os.dup2(os.open(os.devnull, os.O_WRONLY), 1)

    def tell(done: int, total: int) -> None:
        if done % _TOLD_EVERY == 0 or done == total:
            out.write(b"P %d %d\n" % (done, total))
            out.flush()

    try:
        data = pickle.dumps(read_model(Path(sys.argv[1]), tell))
    except IntakeError as error:
        out.write(f"E {' '.join(str(error).split())}\n".encode())
    except MemoryError:
        out.write(b"E the model does not fit into this computer's memory\n")
    else:
        out.write(b"R %d\n" % len(data))
        out.write(data)
    out.close()


if __name__ == "__main__":
    main()
