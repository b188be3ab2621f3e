"""The command line: one module a command, and the one way in, `main`.

For: doing without the window what the window does, in scripts and on machines without a screen. In: words as
they were typed. Out: text on standard output, files where asked, one line a fault on standard error, and an
exit status: 0 all evaluated; 1 a finding of severity error, with `--strict`; 2 the input was refused (nothing
on standard output); 3 the output could not be written, or would be written over what is read; 4 the program
itself failed.

A command is a function from its options to a text and a status. It imports what it needs when it runs, so
that no command waits for another's libraries; Qt only where the window opens. `commands` has `main` and the
list of commands, `shared` what several of them need.
"""

from configurator.cli.commands import main

__all__ = ["main"]
