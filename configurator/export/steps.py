"""How far a document is written, told to whoever watches it."""

from configurator.order.studied import Cancelled, Progress


class Steps:
    """Counts rows, of `total`; a watcher is told of some of them, and may stop the work at each."""

    def __init__(self, total: int, progress: Progress | None = None) -> None:
        self.done = 0
        self.total = total
        self._progress = progress

    def take(self, rows: int = 1) -> None:
        """Note that so many more rows are done. Raises Cancelled when the watcher says not to go on."""
        self.done += rows
        if self._progress is not None and not self._progress(min(self.done, self.total), self.total):
            raise Cancelled
