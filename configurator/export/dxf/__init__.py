"""Sheets as DXF, and what a drawing from elsewhere holds.

What comes in: pages of `drawing`, or another's DXF file. What goes out: the bytes of a drawing with a layout
for every page, or lines in inches with the layers they stand on.

`tables` makes an empty drawing with its styles and marks, `entities` paints primitives into it, `blocks`
keeps parts and title block whole, `layouts` places what is drawn in model space and shows it on paper.
`reading` takes the lines out of another's drawing, `tracing` lays them into an opening. The library, ezdxf,
is loaded with this room only.

Nothing here decides what a page shows.
"""
