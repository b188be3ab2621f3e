"""The command that counts the hinges of a job into an order, prices it, freezes it, or says what changed."""

import argparse
import json
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from configurator.cli.shared import (
    DONE,
    STANDARD,
    add_out,
    add_strict,
    complain,
    load_job,
    over_its_own_input,
    progress_line,
    refuse_ending,
    refused,
    result_header,
    strict_status,
    tallies_of,
    whole_number,
    written,
)
from configurator.model import Job, Revision
from configurator.model.faults import Fault
from configurator.project_file import ProjectFileError

if TYPE_CHECKING:
    from configurator.documents.papers import Counted
    from configurator.order.lines import Spare
    from configurator.order.prices import Priced
    from configurator.order.take_off import TakeOff
    from configurator.order.tally import Tally
    from configurator.project_file.held import HeldFile

LABELS = ("labels", "floor labels")
KINDS = ("order", "supplier", "quote", "cost", "receiving", *LABELS)
"""What `--as` writes."""


def add_order_command(commands: Any) -> None:
    """Add `order` to the command line's commands."""
    order = commands.add_parser(
        "order",
        help="count the hinges of a job into order lines",
        epilog="example: opening-configurator order job.json --spare 5%% --out order.xlsx",
    )
    order.add_argument("file", type=Path, metavar="FILE", help="the job; - is standard input")
    order.add_argument("--json", action="store_true", help="print the order as data")
    add_out(order, "X.csv|xlsx|pdf")
    order.add_argument(
        "--spare", metavar="5%|2", help="spare hinges: per cent of each line, or a number a line"
    )
    order.add_argument("--screw-pack", type=whole_number, metavar="N", help="count screws in packs of N too")
    order.add_argument("--prices", type=Path, metavar="P.csv|xlsx", help="your own price list, not the job's")
    order.add_argument("--no-prices", action="store_true", help="leave out the job's price list")
    order.add_argument("--margin", type=float, metavar="N", help="margin of a quote, per cent of its price")
    order.add_argument(
        "--as",
        dest="kind",
        choices=KINDS,
        default="order",
        help="what to write: the order, it without what is for the office (supplier), a quote, "
        "a quote with cost and margin (cost), a receiving list, labels for packing",
    )
    order.add_argument(
        "--substitute",
        metavar="'HAVE for SIZE'",
        help="say at which openings a size on the shelf will do, as '4-1/2 x 5 for 4-1/2 x 4'",
    )
    order.add_argument(
        "--since", type=whole_number, metavar="N", help="only what changed since revision N of the order"
    )
    order.add_argument(
        "--submittal", action="store_true", help="with cover, schedule and cautions, for whoever approves it"
    )
    _add_freezing(order)
    order.add_argument(
        "--all-the-same",
        action="append",
        metavar="MARK",
        help="order an opening in spite of the errors that hold it, and keep that in the file",
    )
    add_strict(order)
    order.set_defaults(run=order_command)


def _add_freezing(order: argparse.ArgumentParser) -> None:
    """Add the options that keep an order in its file as a revision."""
    order.add_argument(
        "--freeze", metavar="NOTE", help="keep the order in the file as its next revision, with a note"
    )
    order.add_argument(
        "--mark-ordered", action="store_true", help="with --freeze, note its openings as ordered"
    )
    order.add_argument(
        "--with-errors",
        action="store_true",
        help="with --freeze, freeze although errors stand against the order",
    )


def order_command(options: argparse.Namespace) -> tuple[str, int]:
    """Return the order as text or data and the exit status; written to a file too where one is named.

    An order that is frozen goes out first, and only then into its own file.
    """
    _refuse_what_does_not_go_together(options)
    if options.freeze is None:
        for name in ("mark_ordered", "with_errors"):
            if getattr(options, name):
                raise refused(f"--{name.replace('_', '-')}", "goes with --freeze")
        if not options.all_the_same:
            return _ordered(load_job(options.file), options, None)
    asked = "--freeze" if options.freeze is not None else "--all-the-same"
    if options.file == STANDARD:
        raise refused(asked, "keeps the order in the job's own file; standard input has none")
    from configurator.project_file.held import open_held

    file, job = open_held(options.file)
    try:
        if file.why_not:
            raise refused(asked, f"the order cannot be kept in the file: {file.why_not}")
        return _ordered(job, options, file)
    finally:
        file.release()


def _refuse_what_does_not_go_together(options: argparse.Namespace) -> None:
    if options.kind in LABELS:
        if options.out is None or options.out.suffix.lower() != ".pdf":
            raise refused("--out", "labels are a PDF; name one, as labels.pdf")
    else:
        refuse_ending(options.out)
    for name in ("freeze", "all_the_same", "prices", "submittal"):
        if options.substitute is not None and getattr(options, name) not in (None, False):
            raise refused("--substitute", f"only tries it; leave out --{name.replace('_', '-')}")
    if options.submittal and options.prices is not None:
        raise refused("--submittal", "has no prices; leave out --prices")
    if options.submittal and options.kind != "order":
        raise refused("--submittal", "is a paper of its own; leave out --as")
    if options.margin is not None and not 0 <= options.margin < 100:
        raise refused(
            "--margin", f"a margin is from 0 to less than 100 per cent; {options.margin:g} was given"
        )


def _ordered(job: Job, options: argparse.Namespace, file: "HeldFile | None") -> tuple[str, int]:
    revision = _revision(job, options)
    job, tallies, order = _taken_off(job, options, revision)
    if revision is not None:
        return _changes(job, revision, order, options)
    if options.substitute is not None:
        return _substitution(job, tallies, options)
    job = _with_order_facts(job, options)
    priced = _priced(order, _price_list(job, options))
    status = strict_status(options, _severities(order))
    kept = job if options.freeze is None else _frozen(job, order, options)
    from configurator.documents.papers import Counted

    counted = Counted(kept, tuple(tallies), order, priced)
    text = _written("submittal" if options.submittal else options.kind, counted, options.out)
    data = _as_data(counted, options.kind)
    if file is not None:
        file.save(kept)
    if options.freeze is not None:
        data["revision"] = kept.revisions[-1].number
        text += f"kept as revision {data['revision']}: {options.file}\n"
    return _data("order", data) if options.json else text, status


def _frozen(job: Job, order: "TakeOff", options: argparse.Namespace) -> Job:
    """Return the job with the order kept as its next revision."""
    from datetime import date

    from configurator.order.revisions import RevisionError, freeze, marked_ordered, with_revision

    if (stands := order.errors()) and not options.with_errors:
        raise refused("--freeze", f"{stands} To freeze it as it is, add --with-errors")
    try:
        revision = freeze(job, order, date.today().isoformat(), options.freeze.strip() or None)
    except RevisionError as error:
        raise ProjectFileError((error.fault,)) from None
    return with_revision(marked_ordered(job, order) if options.mark_ordered else job, revision)


def _with_order_facts(job: Job, options: argparse.Namespace) -> Job:
    """Return the job with what was asked for this time; it is kept where the order is frozen."""
    said: dict[str, Any] = {}
    if options.margin is not None:
        said["margin"] = options.margin
    if options.prices is not None:
        from configurator.order.price_list import named_from

        said["price_list"] = named_from(options.prices, options.file)
    return job.model_copy(update={"order": job.order.model_copy(update=said)}) if said else job


def _price_list(job: Job, options: argparse.Namespace) -> Path | None:
    """Return the file of prices that was asked for, else the job's own where it can be read."""
    given: Path | None = options.prices
    if given is not None or options.no_prices or options.submittal or not job.order.price_list:
        return given
    path = Path(options.file).absolute().parent / job.order.price_list
    if path.is_file():
        if over_its_own_input(options.out, [path]) is not None:
            raise refused("--out", f"{options.out.name} is the job's price list, which it reads")
        return path
    complain(f"the job's price list is not there, and the order has no prices: {path}")
    return None


def _written(kind: str, counted: "Counted", path: Path | None) -> str:
    """Write a paper, or labels, and return where it is; with no file named, return it as text."""
    from configurator.documents.papers import NoPaperError, paper_of

    try:
        if kind in LABELS and path is not None:
            from configurator.export.document import write_paper

            write_paper(kind, counted, path)
            return f"{path}: {kind}\n"
        return written(paper_of(kind, counted), path)
    except NoPaperError as error:
        raise refused("--as", str(error)) from None


def _substitution(job: Job, tallies: "Sequence[Tally]", options: argparse.Namespace) -> tuple[str, int]:
    """Return where a size on the shelf will do, and the order with it there."""
    from configurator.documents.changes import substitution_document
    from configurator.order.price_list import read_hinge_size
    from configurator.order.substitute import substitute
    from configurator.order.take_off import take_off

    try:
        has, wanted = (read_hinge_size(part) for part in options.substitute.lower().split(" for "))
    except ValueError as error:
        raise refused("--substitute", f"is written as '4-1/2 x 5 for 4-1/2 x 4'; {error}") from None
    with progress_line("Trying it at every opening") as tell:
        found = substitute(tallies, has, wanted, job.job, tell)
    order = take_off(found.tallies, job.job, _spare(options, None), options.screw_pack)
    if options.json:
        return _data("order", {"substitution": found.as_data(), **order.as_data()}), DONE
    return written(substitution_document(found, order), options.out), DONE


def _revision(job: Job, options: argparse.Namespace) -> Revision | None:
    """Return the revision that was asked for; prices are of a whole order, so they do not go with it."""
    if options.since is None:
        return None
    for name in ("prices", "submittal", "freeze", "substitute", "all_the_same"):
        if getattr(options, name) not in (None, False):
            said = f"gives what changed, and nothing else; leave out --{name.replace('_', '-')}"
            raise refused("--since", said)
    for revision in job.revisions:
        if revision.number == options.since:
            return revision
    known = ", ".join(str(revision.number) for revision in job.revisions) or "none"
    raise refused("--since", f"there is no revision {options.since} in this job; it has {known}")


def _changes(job: Job, revision: Revision, order: "TakeOff", options: argparse.Namespace) -> tuple[str, int]:
    from configurator.documents.changes import changes_as_data, changes_document
    from configurator.order.revisions import RevisionError, changes_since

    try:
        changes = changes_since(revision, job, order)
    except RevisionError as error:
        raise ProjectFileError((error.fault,)) from None
    status = strict_status(options, _severities(order))
    text = written(changes_document(changes, job.job), options.out)
    return _data("order-changes", changes_as_data(changes)) if options.json else text, status


def _spare(options: argparse.Namespace, revision: Revision | None) -> "Spare | None":
    """Return the allowance asked for; with a revision and none asked for, that revision's own."""
    from configurator.order.lines import parse_spare
    from configurator.order.revisions import RevisionError, spare_of

    try:
        if options.spare is not None:
            return parse_spare(options.spare)
        return spare_of(revision) if revision is not None else None
    except RevisionError as error:
        raise ProjectFileError((error.fault,)) from None
    except ValueError as error:
        raise refused("--spare", str(error)) from None


def _taken_off(
    job: Job, options: argparse.Namespace, revision: Revision | None
) -> "tuple[Job, Sequence[Tally], TakeOff]":
    from configurator.order.take_off import take_off
    from configurator.order.uniform import uniform

    spare = _spare(options, revision)
    if options.screw_pack is not None and options.screw_pack < 1:
        raise refused("--screw-pack", f"a pack holds at least 1 screw; {options.screw_pack} was given")
    tallies = tallies_of(job)
    if options.all_the_same:
        job, tallies = _released(job, tallies, options.all_the_same)
    with progress_line("Asking whether one width would do") as tell:
        also = uniform(tallies, job.job, tell)
    return job, tallies, take_off(tallies, job.job, spare, options.screw_pack, also)


def _released(job: Job, tallies: "Sequence[Tally]", marks: Sequence[str]) -> "tuple[Job, Sequence[Tally]]":
    """Return the job with the openings of those marks ordered in spite of what holds them."""
    from configurator.order.studied import with_despite
    from configurator.order.tally import for_opening

    holding = {one.mark: [found.code for found in one.holding] for one in tallies}
    for mark in marks:
        if not holding.get(mark):
            raise refused("--all-the-same", f"no error holds the order of {mark!r}")
        job = job.model_copy(update={"openings": with_despite(job.openings, (mark,), holding[mark])})
    return job, [for_opening(one, opening) for one, opening in zip(tallies, job.openings, strict=True)]


def _priced(order: "TakeOff", path: Path | None) -> "Priced | None":
    if path is None:
        return None
    from configurator.order.price_list import PriceListError, load_prices
    from configurator.order.prices import price_order

    try:
        return price_order(order.lines, load_prices(path), order.other_ways)
    except PriceListError as error:
        faults = (
            Fault(f"{path.name} {fault.field}" if fault.field else "", fault.message)
            for fault in error.faults
        )
        raise ProjectFileError(tuple(faults)) from None


def _as_data(counted: "Counted", kind: str) -> dict[str, Any]:
    data, priced, facts = counted.order.as_data(), counted.priced, counted.job.order
    data["order"] = facts.model_dump(exclude_unset=True)
    if priced is not None:
        from configurator.order.prices import NO_PRICE

        for line in data["lines"]:
            one = priced.by_line.get(line["line"])
            line |= NO_PRICE if one is None else one.as_data()
        for place, way in enumerate(data["other_ways"], start=1):
            one = priced.by_way.get(place)
            # What it is in words stays: a price list has no better ones.
            way |= (NO_PRICE if one is None else one.as_data()) | {"description": way["description"]}
        data["totals"] |= priced.as_data()
    if kind in ("quote", "cost") and priced is not None and facts.margin is not None:
        from decimal import Decimal

        from configurator.documents.quote import quoted

        lines = quoted(counted.order, priced, Decimal(f"{facts.margin:g}"))
        data["quote"] = [line.as_data() for line in lines]
    return data


def _severities(order: "TakeOff") -> Iterator[str]:
    return (one.finding.severity for one in order.findings)


def _data(kind: str, data: dict[str, Any]) -> str:
    return json.dumps(result_header(kind) | data, allow_nan=False) + "\n"
