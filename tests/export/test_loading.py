import subprocess
import sys

LOADED = """
from configurator.export import load_matplotlib_quickly
load_matplotlib_quickly()
from matplotlib.lines import Line2D
line = Line2D([0, 1], [0, 1])
line.set(linewidth=3, label="jamb")
print(line.get_linewidth(), line.get_label(), len(Line2D.set.__doc__ or ""))
"""


def test_artists_work_alike_without_their_help():
    # A process of its own: the classes that other tests loaded have their help already.
    result = subprocess.run([sys.executable, "-c", LOADED], capture_output=True, text=True, timeout=60)
    width, label, help_length = result.stdout.split()
    assert (float(width), label) == (3, "jamb")
    assert int(help_length) < 200
