"""An architect's building model (IFC, ISO 16739) as a source of the intake, and hinges back into it.

`library` opens a file, or says in a sentence why not. `reading` reads it into `records`, plain and free of
the library, so that `apart` can do it in a process of its own: `doors` has what is said of a door, `walls`
the wall it stands in, `meshes` the shapes, `leaf_shape` what its own shape says of its hand, `neighbours`
what stands before it. `schedule` puts the records into the table that the intake reads (`along_wall`), and
`against` sets them against a door schedule. `write_back` and `topics` take plain hinges and findings to a
copy of the model and to a file of topics.

In: a file, and what the command line or the window hands over. Out: records, a table, files. It must not
know studies, rules or the window. ifcopenshell is imported here only, and only when a model is opened;
without it every way in says how to get it.
"""
