"""Running text on a page: broken into lines of a width, and cut where a line may be no longer."""

from collections.abc import Iterator

from configurator.drawing.base.lettering import text_width


def broken(text: str, size: float, width: float, bold: bool = False) -> tuple[str, ...]:
    """Return the text in lines no wider than `width` points; a word wider than that is broken itself."""
    lines: list[list[str]] = []
    space, used = text_width(" ", size, bold), width
    for word in _words(text, size, width, bold):
        wide = text_width(word, size, bold)
        if used + space + wide <= width:
            lines[-1].append(word)
            used += space + wide
        else:
            lines.append([word])
            used = wide
    return tuple(" ".join(words) for words in lines)


def cut_to(text: str, size: float, width: float, bold: bool = False) -> str:
    """Return the text if it is no wider than `width` points, else its beginning with an ellipsis."""
    if text_width(text, size, bold) <= width:
        return text
    kept = text
    while kept and text_width(kept.rstrip() + "…", size, bold) > width:
        kept = kept[:-1]
    return kept.rstrip() + "…"


def _words(text: str, size: float, width: float, bold: bool) -> Iterator[str]:
    for word in text.split():
        if text_width(word, size, bold) <= width:
            yield word
            continue
        piece = ""
        for letter in word:
            if piece and text_width(piece + letter, size, bold) > width:
                yield piece
                piece = ""
            piece += letter
        yield piece
