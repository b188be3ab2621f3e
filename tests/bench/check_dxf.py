"""Every sheet of openings at random as a DXF, read back as a draftsman's program reads it.

Usage: python tests/bench/check_dxf.py [OPENINGS, 200 if left out]

Each drawing is audited; each dimension is drawn anew from its style, and must measure and read as before;
door, frame and hinge must carry what the opening is. Prints what is wrong, and how much was checked.
"""

import io
import sys
from collections import Counter
from fractions import Fraction

import ezdxf
from ezdxf.entities import Dimension
from ezdxf.render import dim_linear
from ezdxf.render.dim_base import LengthMeasurement
from ezdxf.tools.text import plain_mtext, plain_text

from configurator.drawing.sheets import opening_tags
from configurator.export.pages import pages_as_bytes
from tests.export.random_sheets import KINDS, display_of, page_of, random_study

FRACTIONAL = 5
PARTS = ("DOOR", "FRAME", "HINGE")


class Fractions(LengthMeasurement):
    """Writes what the library leaves out: a number in the fractions its style asks for."""

    def format_text(self, value: float) -> str:
        """Return the number as a program of drawings writes it."""
        if self.length_unit != FRACTIONAL:
            return super().format_text(value)
        parts = round(value * 2**self.decimal_places)
        whole, rest = divmod(parts, 2**self.decimal_places)
        fraction = str(Fraction(rest, 2**self.decimal_places)) if rest else ""
        return "-".join(filter(None, (str(whole) if whole or not rest else "", fraction)))


def lettered(dimension: Dimension) -> str:
    """Return what stands in the block of a dimension."""
    block = dimension.get_geometry_block()
    words = [plain_text(one.dxf.text) for one in block.query("TEXT")]
    words += [plain_mtext(one.text) for one in block.query("MTEXT")]
    return " ".join(" ".join(words).split())


def faults_of(kind: str, seed: int, counts: Counter[str]) -> list[str]:
    """Return what is wrong with one sheet."""
    page = page_of(kind, seed)
    drawing = ezdxf.read(io.StringIO(pages_as_bytes([page], ".dxf").decode("utf-8")))
    found = [f"audit: {one.message}" for one in drawing.audit().errors]
    for dimension in drawing.modelspace().query("DIMENSION"):
        counts["dimensions"] += 1
        read, measured = lettered(dimension), abs(dimension.get_measurement())
        counts["live"] += "<>" in dimension.dxf.text
        dimension.override().render()
        if lettered(dimension) != read or abs(abs(dimension.get_measurement()) - measured) > 1e-9:
            found.append(f"{read!r} is drawn anew as {lettered(dimension)!r}")
    told = dict(opening_tags(random_study(seed), display_of(seed)))
    for insert in drawing.modelspace().query("INSERT"):
        if not insert.dxf.name.startswith(PARTS):
            continue
        counts["blocks"] += 1
        carried = {one.dxf.tag: one.dxf.text for one in insert.attribs}
        found += [
            f"{insert.dxf.name}: {carried}" for key in ("MARK", "HAND", "SIZE") if carried[key] != told[key]
        ]
        if not carried["HINGE"]:
            found.append(f"{insert.dxf.name} has no hinge")
    return found


def main() -> None:
    """Check the sheets and print what is wrong."""
    dim_linear.LengthMeasurement = Fractions  # type: ignore[misc]
    openings = int(sys.argv[1]) if len(sys.argv) > 1 else 200
    counts: Counter[str] = Counter()
    wrong = 0
    for seed in range(openings):
        for kind in KINDS:
            for fault in faults_of(kind, seed, counts):
                wrong += 1
                print(f"{seed} {kind}: {fault}")
            counts["sheets"] += 1
    print(f"{wrong} faults; " + ", ".join(f"{count:,} {what}" for what, count in counts.items()))


if __name__ == "__main__":
    main()
