"""Whether a window can open here, told before Qt is loaded, and on what versions the program stands."""

import ctypes
import gc
import importlib.util
import os
import re
import socket
import sys
from collections.abc import Mapping
from pathlib import Path

PARTS = (
    "opening-configurator",
    "PySide6-Essentials",
    "matplotlib",
    "numpy",
    "pydantic",
    "reportlab",
    "ezdxf",
)
"""What the versions told are of."""
ALWAYS_NEEDED = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libX11.so.6": "libx11-6",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libfreetype.so.6": "libfreetype6",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libxkbcommon.so.0": "libxkbcommon0",
}
"""Shared library to the Debian package that holds it; Qt itself links to these."""
NEEDED_ON_X11 = {
    "libX11-xcb.so.1": "libx11-xcb1",
    "libxcb.so.1": "libxcb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-image.so.0": "libxcb-image0",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-randr.so.0": "libxcb-randr0",
    "libxcb-render.so.0": "libxcb-render0",
    "libxcb-render-util.so.0": "libxcb-render-util0",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-shm.so.0": "libxcb-shm0",
    "libxcb-sync.so.1": "libxcb-sync1",
    "libxcb-util.so.1": "libxcb-util1",
    "libxcb-xfixes.so.0": "libxcb-xfixes0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
}
"""Likewise, for Qt's window on an X11 display."""
NEEDED_ON_WAYLAND = {
    "libwayland-client.so.0": "libwayland-client0",
    "libwayland-cursor.so.0": "libwayland-cursor0",
}
_PACKAGES = {**ALWAYS_NEEDED, **NEEDED_ON_X11, **NEEDED_ON_WAYLAND}
_SEEN_BY_NOBODY = ("offscreen", "minimal", "minimalegl")


def load_qt_quickly() -> None:
    """Load Qt's binding so that what is loaded after it, until the picture stands, takes a tenth less time.

    Garbage is not looked for until then. And the binding does not read the source of every module to see
    whether it names PySide6. It would learn from that whose other spellings of Qt's names to keep to; nobody
    here asks for those. A binding that does so otherwise reads on. Raises ImportError where there is none.
    """
    gc.disable()
    from PySide6 import QtCore  # noqa: F401

    feature, reads = sys.modules.get("shibokensupport.feature"), "_mod_uses_pyside"
    if hasattr(feature, reads):
        setattr(feature, reads, lambda _: True)


def why_no_window() -> str | None:
    """Return a sentence saying why no window can open here, or None where one can."""
    if importlib.util.find_spec("PySide6") is None:
        return "The window needs PySide6, which is not installed: install PySide6-Essentials."
    if (sentence := _missing_sentence(ALWAYS_NEEDED)) is not None:
        return sentence
    if not has_display():
        return "There is no display here, so no window can open."
    return _missing_sentence(NEEDED_ON_WAYLAND if _platform() == "wayland" else NEEDED_ON_X11)


def has_display(environment: Mapping[str, str] = os.environ) -> bool:
    """Say whether there is a screen that a window could be seen on."""
    platform = environment.get("QT_QPA_PLATFORM", "").split(":")[0].split(";")[0]
    if platform in _SEEN_BY_NOBODY:
        return False
    if platform not in ("", "xcb", "wayland"):
        return True
    if platform != "xcb" and _answers_wayland(environment):
        return True
    return platform != "wayland" and bool(environment.get("DISPLAY")) and _answers_x11()


def missing_library_sentence(error: ImportError) -> str | None:
    """Return a sentence naming the Debian package of the library an import missed; else None."""
    found = re.match(r"(lib[\w.+-]+\.so[.\d]*): cannot open shared object file", str(error))
    return _sentence([found.group(1)]) if found else None


def _missing_sentence(libraries: Mapping[str, str]) -> str | None:
    missing = [library for library in libraries if not _loads(library)]
    return _sentence(missing) if missing else None


def _sentence(libraries: list[str]) -> str:
    packages = list(dict.fromkeys(_PACKAGES[library] for library in libraries if library in _PACKAGES))
    what = ", ".join(libraries)
    if not packages:
        return f"The window needs {what}, which is not on this machine."
    return f"The window needs {what}: install with  sudo apt-get install {' '.join(packages)}"


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def _platform() -> str:
    chosen = os.environ.get("QT_QPA_PLATFORM", "").split(":")[0].split(";")[0]
    return chosen or ("wayland" if _answers_wayland(os.environ) else "xcb")


def _answers_wayland(environment: Mapping[str, str]) -> bool:
    name, folder = environment.get("WAYLAND_DISPLAY"), environment.get("XDG_RUNTIME_DIR")
    if not name or not (folder or name.startswith("/")):
        return False
    with socket.socket(socket.AF_UNIX) as connection:
        try:
            connection.connect(str(Path(folder or "/") / name))
        except OSError:
            return False
    return True


def _answers_x11() -> bool:
    """Ask the X server itself: Qt ends the process where DISPLAY is set and nobody answers."""
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return True  # the missing library is the better reason, and is said next
    xcb.xcb_connect.restype = ctypes.c_void_p
    connection = ctypes.c_void_p(xcb.xcb_connect(None, None))
    refused = bool(xcb.xcb_connection_has_error(connection))
    xcb.xcb_disconnect(connection)
    return not refused


def versions() -> str:
    """Return the versions of the program and of what it stands on, a line each; nothing of its user."""
    import platform  # both are slow to load, and seldom asked
    from importlib.metadata import version

    of_parts = [f"{name} {version(name)}" for name in PARTS]
    return "\n".join((*of_parts, f"Python {platform.python_version()}", platform.system()))
