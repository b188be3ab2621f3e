"""An architect's door schedule, CSV or XLSX, into a job: read, compared, and taken only when told so.

`sheet` reads a file into rows of texts (`text_file`, `workbook`), `table` finds the header and `columns` says
what stands under each heading; `rows` reads each row into values, faults and assumptions (`sizes`, `words`);
`comparing` sets them against a job. Nothing here writes: `comparing.openings_with` gives the openings a job
would have, and whoever asked puts them on the history or into the file.

What can be long is a generator that yields how far it is, so that a window can stay alive; `run` runs it out.
"""
