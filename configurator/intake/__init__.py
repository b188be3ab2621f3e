"""An architect's door schedule, CSV or XLSX, into a job: read, compared, and taken only when told so.

`sheet` reads a file into rows of texts (`text_file`, `workbook`), `table` finds the header (`fields`) and
what stands about it (`notes`), and `columns` says what stands under each heading. `asking` has what a row
must be asked before it is an opening, `rows` reads it into values, faults and assumptions (`sizes`,
`words`). `comparing` sets the rows against a job, `saying` words it all and has what became of every cell.
`refused.QUESTIONS` are asked once for all rows; a row that waits for an answer has a fault and is not
taken.

Nothing here writes: `comparing.openings_with` and `facts_with` give what a job would have, and whoever
asked puts that on the history or into the file. What can be long is a generator that yields how far it is,
so that a window can stay alive; `run` runs it out.
"""
