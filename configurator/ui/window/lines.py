"""What the window says and asks in the lines above its pages; the lines are made with the first sentence."""

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from configurator.ui.state.session import Session

if TYPE_CHECKING:
    from configurator.model import Job
    from configurator.ui.kit.message_line import Choice, MessageLine

_UNDO = "Undo takes it back"


class Lines:
    """Says a sentence, which the next one replaces, and asks questions that stand until answered."""

    def __init__(self, session: Session, place: Callable[["MessageLine"], object]) -> None:
        """`place` puts the lines where they are seen."""
        self._session, self._place = session, place
        self.line: MessageLine | None = None
        self._said_of: Job | None = None

    def say(self, sentence: str) -> None:
        """Show a sentence in the line under the commands; an empty one takes the line away.

        What can be undone is spoken of only until the job is another one.
        """
        self._said_of = self._session.job if _UNDO in sentence else None
        if sentence or self.line is not None:
            self._made().say(sentence)

    def note(self, sentence: str) -> None:
        """Show what is said of the job as it is now: it goes with the next change."""
        self.say(sentence)
        self._said_of = self._session.job

    def take_back_what_is_over(self) -> None:
        """Take away what was said of the job as it is no more."""
        if self._said_of is not None and self._said_of is not self._session.job:
            self.say("")

    def ask(self, about: str, sentence: str, choices: Sequence["Choice"] = ()) -> None:
        """Show a question there until it is answered; an empty one takes away that about the same."""
        if sentence or self.line is not None:
            self._made().ask(about, sentence, choices)

    def _made(self) -> "MessageLine":
        from configurator.ui.kit.message_line import MessageLine

        if self.line is None:
            self.line = MessageLine()
            self._place(self.line)
        return self.line
