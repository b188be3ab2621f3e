"""Building models: 500 doors at random there and back, the time and memory of 500 and 2,000, valid copies.

Run: nice .venv/bin/python tests/bench/check_models.py [round] [time] [large] [valid]   (all: some minutes)

`round` writes 504 doors in three schemas and four units, reads them and compares every size, hand, layer and
obstruction with what was written, and swings with those of the same openings typed in. `time` reads 500 doors
with their neighbours from one file, in a process of its own as the program does. `large` does so with 2,000
doors and 1,100 pieces of furniture of 5,000 triangles each. `valid` runs the library's validator with all
its rules over copies with hinges.
"""

import resource
import sys
import tempfile
import time
from pathlib import Path

import ifcopenshell.validate
import numpy as np

sys.path.insert(0, str(Path(__file__).resolve().parents[2]))

from configurator.building.apart import read_apart
from configurator.building.reading import read_model
from configurator.building.write_back import HingeSet, write_back
from configurator.model import Opening
from configurator.study import study
from tests.building.conftest import openings
from tests.building.random_models import differences, random_model

FRAME = {"overall size": "frame", "outside": "push"}
HINGES = (HingeSet("Butt hinge", "4-1/2 x 4-1/2", 3, {"Size": "4-1/2 x 4-1/2"}),)


def check_round(folder):
    """Read doors at random and compare them with what was written."""
    doors = things = wrong = swings = other = 0
    for seed in range(12):
        author, wanted = random_model(seed, 42)
        found = openings(read_model(author.write(folder / "round.ifc")), FRAME)
        for mark, data in wanted.items():
            doors, things = doors + 1, things + len(data["obstructions"])
            for line in differences(found[mark], data):
                wrong += 1
                print(f"  model {seed}, door {mark}: {line}")
            if seed % 3 == 0:
                typed, read = study(Opening.model_validate(data)), study(found[mark])
                for one, two in zip(typed.candidates, read.candidates, strict=True):
                    swings += 1
                    other += abs(one.greatest_angle - two.greatest_angle) > 0.01
    print(f"round trip: {doors} doors, {things} obstructions, {wrong} differences")
    print(
        f"swings: {swings} compared with the same opening typed in, {other} differ by more than 0.01 degrees"
    )


def check_time(folder, count=500, heavy=0):
    """Read one file in a process of its own; say how long that takes and what memory it needs."""
    author, wanted = random_model(5, count)
    for number in range(heavy):
        add_heavy(author, number)
    path = author.write(folder / "time.ifc")
    del author
    size = path.stat().st_size / 2**20
    began = time.perf_counter()
    model = read_apart(path)
    seconds = time.perf_counter() - began
    used = resource.getrusage(resource.RUSAGE_CHILDREN)
    most, worked = used.ru_maxrss / 1024, used.ru_utime + used.ru_stime
    boxes = sum(len(one) for door in model.doors for one in door.beside.values())
    wrong = sum(len([*differences(one, wanted[mark])]) for mark, one in openings(model, FRAME).items())
    print(
        f"{len(model.doors):,} doors, {boxes:,} things beside them, {size:.0f} MB: {seconds:.1f} s "
        f"({worked:.1f} s of processor time), {most:,.0f} MB at most in the process that read; "
        f"{wrong} differences"
    )


def add_heavy(author, number):
    """Add a piece of furniture of 5,000 triangles, far from every door."""
    file, u = author.file, author.inch
    turn, rise = np.meshgrid(np.linspace(0, 2 * np.pi, 50), np.linspace(0, 30, 51))
    points = np.stack([20 * np.cos(turn), 20 * np.sin(turn), rise], axis=2).reshape(-1, 3) / u
    faces = []
    for row, col in np.ndindex(50, 50):
        low, next_low = 50 * row + col + 1, 50 * row + (col + 1) % 50 + 1
        faces += [(low, next_low, low + 50), (next_low, next_low + 50, low + 50)]
    mesh = file.createIfcTriangulatedFaceSet(
        file.createIfcCartesianPointList3D(points.tolist()), None, True, faces, None
    )
    from tests.building.author import turned

    made = author._new("IfcFurniture", f"Chair {number}")
    author.place(made, turned(100.0 * number, 3000.0))
    shown = file.createIfcShapeRepresentation(author.body, "Body", "Tessellation", [mesh])
    author._represent(made, shown)


def check_valid(folder):
    """Run the validator with all its rules over copies with hinges."""
    for seed in range(3):
        author, _ = random_model(seed, 6)
        source, copy = author.write(folder / "valid.ifc"), folder / "copy.ifc"
        done = write_back(source, copy, {one.GlobalId: HINGES for one in author.file.by_type("IfcDoor")}, {})
        counts = []
        for path in (source, copy):
            logger = ifcopenshell.validate.json_logger()
            ifcopenshell.validate.validate(str(path), logger, express_rules=True)
            counts.append(len(logger.statements))
        print(f"{author.file.schema}: {done.hinges} hinges; statements before {counts[0]}, after {counts[1]}")


if __name__ == "__main__":
    wanted = sys.argv[1:] or ["round", "time", "large", "valid"]
    with tempfile.TemporaryDirectory() as name:
        if "round" in wanted:
            check_round(Path(name))
        if "time" in wanted:
            check_time(Path(name))
        if "large" in wanted:
            check_time(Path(name), 2000, 1100)
        if "valid" in wanted:
            check_valid(Path(name))
