"""Project files on disk: read with a sentence for every fault, written whole or not at all, never lost.

`reading` and `writing` are the file itself, `migrations` brings older ones up. `lock` says who works on a
file, `held` is the file a window works on, `recovery` keeps unsaved work against a crash: these three are
imported on use, for the command line only reads.

Format history
--------------
1   the first: `format`, `version`, `job`, `openings`; lengths in inches or as the trade writes them. Keys
    have been added since, each optional; the version goes up when an older program would misread a file.
"""

from configurator.project_file.reading import load, parse, read_bytes
from configurator.project_file.refusals import LARGEST_FILE, ProjectFileError
from configurator.project_file.writing import KnownTexts, dump, save, write_whole

__all__ = [
    "LARGEST_FILE",
    "KnownTexts",
    "ProjectFileError",
    "dump",
    "load",
    "parse",
    "read_bytes",
    "save",
    "write_whole",
]
