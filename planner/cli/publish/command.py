"""`planner publish`: send the season to a calendar on a server."""

import sys
from collections import Counter
from collections.abc import Iterable
from contextlib import closing
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Annotated

import typer

from planner.cli.folder import season_events, unwritable
from planner.cli.publish.account import calendar_account
from planner.cli.publish.published import PUBLISHED, PublishedRecord, published_record
from planner.cli.shell import FolderOrHere, JsonOption, need, print_json, refuse

if TYPE_CHECKING:
    from planner.cli.publish.calendar_server import CalendarServer
    from planner.writing import CalendarEvent, Published

_MANY = 50


def publish(
    folder: FolderOrHere = ".",
    url: Annotated[
        str | None,
        typer.Option(
            "--url",
            metavar="ADDRESS",
            help="The calendar's CalDAV address; else PLANNER_CALDAV_URL.",
        ),
    ] = None,
    user: Annotated[
        str | None,
        typer.Option("--user", metavar="NAME", help="Who you are there; else PLANNER_CALDAV_USER."),
    ] = None,
    json: JsonOption = False,
) -> None:
    """Send the season to a calendar on a CalDAV server, where phones see it change.

    Sends only what changed. What you ticked off, changed or took out there is left as it is. The
    password comes from PLANNER_CALDAV_PASSWORD or the computer's keyring.

    Example: planner publish my-garden --url https://dav.example.org/robin/garden/ --user robin
    """
    path = Path(folder)
    events = season_events(path)
    from planner.cli.publish import calendar_server  # noqa: PLC0415 - heavy, and only needed here

    calendar_server.need_library()
    account = need(calendar_account(url, user))
    with closing(calendar_server.CalendarServer(account)) as server:
        done = _published(path, events, server, account.url)
    if json:
        print_json(_counts(done))
    else:
        _tell(done)


def _published(
    folder: Path, events: "list[CalendarEvent]", server: "CalendarServer", url: str
) -> "list[Published]":
    """Take every step, noting each as soon as it is taken."""
    from planner.writing import begins_anew, publication  # noqa: PLC0415 - as above

    held = server.held()
    try:
        record = published_record(folder, url)
        if begins_anew(held, record.imprints):
            record.begin_anew()
        steps = publication(events, held, record.imprints)
        _say_it_may_take_a_while(steps)
        return [_sent(one, server, record) for one in steps]
    except OSError as error:
        refuse(unwritable(folder / PUBLISHED, error, "What was sent stays sent."))


def _say_it_may_take_a_while(steps: "list[Published]") -> None:
    from planner.writing import LEFT, Step  # noqa: PLC0415 - as above

    to_send = sum(1 for one in steps if one.step not in LEFT and one.step is not Step.SAME)
    if to_send > _MANY:
        print(f"Sending {to_send} events, one by one.", file=sys.stderr)


def _sent(one: "Published", server: "CalendarServer", record: PublishedRecord) -> "Published":
    """The event after its step was taken; one changed meanwhile is left for the next run."""
    from planner.writing import LEFT, Step  # noqa: PLC0415 - as above

    if one.step in LEFT:
        return one
    if one.step is Step.CALLED_OFF and one.held is not None:
        if not server.take_out(one.held):
            return replace(one, step=Step.CHANGED)
        record.removed(one.event.uid)
        return one
    if one.step is not Step.SAME and not server.put(one):
        return replace(one, step=Step.CHANGED)
    record.sent(one.event.uid, one.saying.imprint)
    return one


def _counts(done: Iterable["Published"]) -> dict[str, int]:
    """How many events went each way, in the order of the ways."""
    from planner.writing import Step  # noqa: PLC0415 - as above

    counted = Counter(one.step for one in done)
    return {str(step): counted[step] for step in Step if counted[step]}


def _tell(done: "list[Published]") -> None:
    for one in done:
        if one.is_told:
            now = "called off" if one.event.is_called_off else f"on {one.event.first}"
            print(f"{one.saying.summary} is {now} in the season; {_of_one(one.step)}.")
    counts = _counts(done)
    told = [f"{n} {_of_one(step) if n == 1 else step}" for step, n in counts.items()]
    print(", ".join(told) if told else "The season has no events.")


def _of_one(step: str) -> str:
    """The words of a step for one event alone."""
    return step.replace("they were", "it was").replace("them", "it")
