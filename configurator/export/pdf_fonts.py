"""The letters of a PDF; they have every alphabet like ours."""

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from configurator.export.font_files import BOLD, FONT, font_file

__all__ = ["BOLD", "FONT", "load_fonts"]
rl_config.useA85 = 0  # a stream as text is a quarter larger, and slow to write


def load_fonts() -> None:
    """Make both faces known to the PDF library, once; what is used of them is embedded in each file."""
    for name in (FONT, BOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, font_file(name)))
    rl_config.canvas_basefontname = FONT  # else every page names a face of the library's that is not embedded
