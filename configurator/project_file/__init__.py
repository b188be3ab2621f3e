"""Project files on disk: read with a sentence for every fault, written whole or not at all, never lost.

`reading` and `writing` are the file itself, `migrations` brings older ones up. `lock` says who works on a
file, `held` is the file a window works on, `recovery` keeps unsaved work against a crash: these three are
imported on use, for the command line only reads.

Format history
--------------
1   the first: `format`, `version`, `job`, `openings`; lengths in inches or as the trade writes them. Keys
    have been added since, each optional; the version goes up when an older program would misread a file.

Keys
----
`opening-configurator kinds` lists every accepted word; the records in `configurator.model` are the list of
keys, with help for each. Lengths are inches as numbers, or text as the trade writes them. A key left out
and `null` mean the same: the usual value, or worked out. Jamb depth and wall follow one another: without a
wall the throat is the wall, without a jamb depth a frame that follows its wall is as deep as the wall asks;
where both are given and disagree a finding says so. A butted frame in masonry must be given `frame_proud`.
Unknown keys and newer versions are refused by name; a refused file is never touched. Keys may be added,
never renamed.

`hinge_locations` has `rule` (`5 and 10`, usual, or `7 and 11`) or `tops`, the distance of each hinge's top
below the head rabbet from the top hinge down; of a Dutch door each leaf has those whose middle lies on it.
`job.width_policy` is `narrowest that works` (usual), the least stock width that does all it must, or `square
hinges`: as wide as high wherever that does it too.
`compare` lists what is set side by side: a number is a butt's open width, an object another way of hanging:
`hung_on` (`butt hinge`, `swing clear hinge`, `continuous hinge`, `offset pivot`, `centre-hung pivot` or
`double-acting spring hinge`), `axis_off_face` (inches off the closed door's pull face, negative inside the
door) and `axis_from_heel` (inches from the heel edge toward the latch, negative beyond the edge). An axis
left out is at its usual place; a `butt hinge` without one is the butt the program takes. `heel_radius`
rounds the heel edge about the axis, left out it is square. `acting` is `single` or `double`, of a
`centre-hung pivot` only, which is double acting as a rule. A leaf that swings both ways has no stop in its
frame and stands where its rabbet would put it; a spring hinge has a barrel before either face, its axis
given for the pull side.
`door.lead_thickness` is all the lead in a door; it adds to its weight. So do the glass of a lite
(`door.lite_width`, `door.lite_height`, `door.glass_thickness`) and what each piece of hardware weighs.
`status` is how far the facts are settled, `order_state` what has become of the order (`not ordered`,
`ordered`, `received`); the status `ordered` of older files is read as that state, and as assumed.
`fire_minutes` are those of the label: any make the opening rated as `use.fire_rated` does, and where the two
disagree it is rated and a finding asks. `hardware_set`, `glass`, `level`, `details` (`head`, `jamb`, `sill`)
and `remarks` are an architect's, kept as written; `other_columns` has what else a schedule says of it, by
heading. `global_id` is the door in the architect's building model, and an obstruction's `element` what it was
found as there: a newer model takes the place of what has an `element`, and leaves what was typed.
`pull_side` and `push_side` are the free floor before an accessible door: `approach` (`front`, `hinge` or
`latch`), `depth` from the wall face, `latch_side` and `hinge_side` from the frame's outer edge.
`use.beds_moved` and `use.alteration` change the clear width that is asked for.
`door_stop` has `kind`, `projection`, `from_frame` and `height`, the last two worked out where left out.
`order_despite` has the codes of errors that were read and do not hold the order of the opening.
`order`, beside `job`, is what stands over an order, with the file of its prices and the margin of a quote.
The sizes of an obstruction (`projection`, `start`, `diameter`) and of hardware are those usual of its kind
where they are left out; they count as assumed and are asked for. `hardware.opens_to` is where the arm of a
closer or an overhead stop ends the swing, degrees; a closer without one ends no swing. `existing_hinge` is
what hangs there now.
`hinge.wires` and `hinge.transfer` say how many wires pass to the door and through what; an order line has
`wires`. A loop or a transfer is a line of `other_ways`, without an axis.
`background` is of another's `drawing`: its `lines` from the `layers` taken, each a text of points, inches
from the corner of the hinge jamb as the opening is seen from above with its pull side up.
`revisions` are orders as they went out: a line has the keys of an order line, `screws` of one hinge, `spare`,
and `marks` with how many hinges each takes; `openings` is a print of each mark, to see that it changed.

Results
-------
`compare --json` has `job_findings` beside `openings`. `recommended` is empty where an error is against the
hinge, which is then under `not_recommended`. An opening has `manoeuvring`, one for each side: what is
`asked`, what is free, and whether it is `kept`, null where not known. A candidate has `hung_on`,
`axis_off_face` and `axis_from_heel` as above, and `toward`, the side it swings to: `pull`, or `push` for the
second candidate of a leaf that swings both ways, whose lengths off door, frame and wall are those on the
push side. `hinge_width` is null where it hangs on no butt, and what is said of a barrel where there is none.
It has `rests_at`, `held_by` (what holds it there: a door stop, an arm) and `door_stop`; with `--widths` an
opening has `widths`, one for each leaf. `order --json` has `reconciliation`, `not_ordered` and `totals`
beside `lines` and `findings`; prices are texts, so that no cent is lost; `--since` gives `since_revision` and
what to order and to return. A line is a product: `fire` says that some of its hinges go on labelled doors,
`fire_marks` and `screw_kinds` count them and their screws; `ordered_despite` has the errors that each mark is
ordered in spite of; with prices there are `part_number`, `pack`, `packs` and `price_source` too. What an
unaccepted error holds is in `not_ordered`.

No edit is lost
---------------
A window takes the lock first (put there by a hard link, so that it is whole or not there), then the bytes.
A save writes its own copy, looks at what stands on disk last before the rename, and refuses when somebody
else changed it. That, a lock of another program and a lock left behind give way only to a button the user
pressed. A recovery file is written four seconds after an edit; recovered work is one step in the history
over the file as it is.
"""

from configurator.project_file.reading import load, parse, read_bytes
from configurator.project_file.refusals import LARGEST_FILE, ProjectFileError
from configurator.project_file.writing import KnownTexts, dump, save, write_whole

__all__ = [
    "LARGEST_FILE",
    "KnownTexts",
    "ProjectFileError",
    "dump",
    "load",
    "parse",
    "read_bytes",
    "save",
    "write_whole",
]
