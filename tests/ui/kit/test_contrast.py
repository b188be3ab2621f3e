"""Text stands out from its ground by 4.5 to 1 at the least, in light and in dark.

WCAG 2.2, success criterion 1.4.3 Contrast (Minimum), level AA, with its definitions of contrast ratio and
relative luminance, from memory. Disabled widgets are outside of it, as there.
"""

import re
from itertools import product
from pathlib import Path

import pytest
from PySide6.QtGui import QColor, QGuiApplication, QPalette

from configurator.drawing.base.primitives import Dimension, Text
from configurator.drawing.base.style import inks, layers, materials
from configurator.ui import app
from configurator.ui.kit import look
from configurator.ui.kit.look import LEAST, contrast, readable

ROOT = Path(__file__).resolve().parents[3]
LETTERED = re.compile(r'(?:Text|Dimension)\(\s*"(A-[A-Z-]+)"')
ON_MATERIALS = ("paper", "white", "gypsum", "cavity", "solid", "core", "wood", "woodcore", "swept",
                "floor", "floorback", "floorswept")  # fmt: skip
"""What lettering lies on in a picture where it does not lie on the sheet itself."""


ON_VERDICTS = ("yes", "no", "roomwall", "roomwood")
"""What the white lettering of a client's picture lies on: verdicts, and things it names."""
WHITE_LETTERED = "A-ANNO-VERD"


def test_the_ratio_is_that_of_its_definition():
    assert contrast("#000000", "#ffffff") == pytest.approx(21.0)
    assert contrast("#123456", "#123456") == 1.0
    assert contrast("#767676", "#ffffff") == pytest.approx(4.54, abs=0.005)  # the usual least grey on white


def _lettered_layers() -> set[str]:
    """The layers that any module letters on, as its source says; at least those of dimensions and notes."""
    found = set()
    for module in (ROOT / "configurator").rglob("*.py"):
        found |= set(LETTERED.findall(module.read_text(encoding="utf-8")))
    return found


def test_lettered_layers_are_found():
    assert {"A-ANNO-TEXT", "A-ANNO-NOTE", "A-ANNO-TTLB", "A-ANNO-DIMS", "A-ANNO-REDL"} <= _lettered_layers()
    assert Text.__name__ == "Text"
    assert Dimension.__name__ == "Dimension"


@pytest.mark.parametrize("dark", [False, True], ids=["light", "dark"])
def test_lettering_of_pictures_stands_out(dark):
    grounds = {"paper of the sheet": inks()["paper"]} | {
        name: materials()[name].ground for name in ON_MATERIALS
    }
    lettered = {"A-ANNO-DIMS-AXIS", *_lettered_layers()} - {WHITE_LETTERED}
    white = {name: materials()[name].ground for name in ON_VERDICTS}
    pairs = (*product(sorted(lettered), grounds.items()), *product([WHITE_LETTERED], white.items()))
    for name, (ground, shade) in pairs:
        ratio = contrast(layers()[name].ink.on(dark), shade.on(dark))
        assert ratio >= LEAST, f"{name} on {ground}: {ratio:.2f}"


def test_a_platforms_palette_is_mended_only_where_it_must_be():
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.HighlightedText, QColor("#ffffff"))
    palette.setColor(QPalette.ColorRole.Highlight, QColor("#308cc6"))  # 3.7 to 1
    mended = readable(palette)
    assert contrast(mended.color(QPalette.ColorRole.Highlight).name(), "#ffffff") >= LEAST
    palette.setColor(QPalette.ColorRole.Highlight, QColor("#1f5f8f"))
    assert readable(palette).color(QPalette.ColorRole.Highlight) == QColor("#1f5f8f")
    palette.setColor(QPalette.ColorRole.HighlightedText, QColor("#000000"))
    palette.setColor(QPalette.ColorRole.Highlight, QColor("#ffd27f"))  # dark text on a light ground
    assert readable(palette).color(QPalette.ColorRole.Highlight) == QColor("#ffd27f")
    assert readable(palette).color(QPalette.ColorRole.Window) == palette.color(QPalette.ColorRole.Window)


WORDS = ("error", "warning", "note", "quiet")


@pytest.fixture(params=[False, True], ids=["light", "dark"])
def themed(request, qapp):
    """The palette of a theme, as every widget has it."""
    look.use_theme(qapp, request.param)
    yield request.param, QGuiApplication.palette()
    look.use_theme(qapp, False)


def test_coloured_words_of_the_window_stand_out(themed):
    dark, palette = themed
    for role in ("Window", "Base", "AlternateBase"):
        ground = palette.color(QPalette.ColorRole[role]).name()
        for word in WORDS:
            ratio = contrast(look.colour(word, dark), ground)
            assert ratio >= LEAST, f"{word} on {role} {ground}: {ratio:.2f}"


@pytest.mark.parametrize(
    ("text", "ground"),
    [
        ("WindowText", "Window"),
        ("Text", "Base"),
        ("Text", "AlternateBase"),
        ("ButtonText", "Button"),
        ("ToolTipText", "ToolTipBase"),
        ("Link", "Window"),
        ("HighlightedText", "Highlight"),
    ],
)
def test_plain_words_of_the_window_stand_out(themed, text, ground):
    _, palette = themed
    one, other = (palette.color(QPalette.ColorRole[role]).name() for role in (text, ground))
    assert contrast(one, other) >= LEAST


def test_what_an_empty_field_means_can_be_read(themed):
    _, palette = themed
    colour = palette.color(QPalette.ColorRole.PlaceholderText)
    ground = palette.color(QPalette.ColorRole.Base)
    share = colour.alphaF()
    mixed = "#" + "".join(
        f"{round(255 * (share * a + (1 - share) * b)):02x}"
        for a, b in zip(colour.getRgbF()[:3], ground.getRgbF()[:3], strict=True)
    )
    ratio = contrast(mixed, ground.name())
    assert ratio >= LEAST, f"{mixed} on {ground.name()}: {ratio:.2f}"


def test_an_open_window_has_the_mended_palette(qapp, window, qtbot):
    qapp.setPalette(QPalette())
    placeholder = QPalette.ColorRole.PlaceholderText
    before = qapp.palette().color(placeholder)
    app.begin(window)
    qtbot.waitUntil(lambda: qapp.palette().color(placeholder) != before)
    assert qapp.palette().color(placeholder).alpha() > before.alpha()
