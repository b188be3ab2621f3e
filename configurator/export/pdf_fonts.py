"""The letters of a PDF: DejaVu Sans, which comes with matplotlib; it has every alphabet like ours."""

from pathlib import Path

import matplotlib as mpl
from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

rl_config.useA85 = 0  # a stream as text is a quarter larger, and slow to write
FONT, BOLD = "DejaVuSans", "DejaVuSans-Bold"


def load_fonts() -> None:
    """Make both faces known to the PDF library, once; what is used of them is embedded in each file."""
    folder = Path(mpl.get_data_path()) / "fonts" / "ttf"
    for name in (FONT, BOLD):
        if name not in pdfmetrics.getRegisteredFontNames():
            pdfmetrics.registerFont(TTFont(name, folder / f"{name}.ttf"))
