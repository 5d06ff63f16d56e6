"""`planner share`: a calendar that apps subscribe to, and a page to tick tasks off on."""

import errno
import socket
from collections.abc import Callable
from datetime import date
from functools import partial
from pathlib import Path
from typing import Annotated

import typer

from planner.cli.folder import LIVE, PAGE, need_calendar
from planner.cli.option_values import whole_number
from planner.cli.share.address import share_token
from planner.cli.share.page_server import Pages, PageServer
from planner.cli.share.revising import Revising
from planner.cli.share.shared_calendar import shared_calendar
from planner.cli.share.ticks import Ticks
from planner.cli.shell import FolderOrHere, need, refuse, today
from planner.cli.this_computer import is_loopback, names_of_this_computer
from planner.terms import Place, Problem

_PORT = 8017
_HERE = "127.0.0.1"
_WHY_NOT = {
    errno.EADDRINUSE: "Another program has this port.",
    errno.EADDRNOTAVAIL: "This computer has no such address.",
    errno.EACCES: "This port is kept for the system.",
}
_ANYWHERE = {"0.0.0.0", "::"}  # noqa: S104 - recognised, not bound to unasked


def share(
    folder: FolderOrHere = ".",
    port: Annotated[
        int,
        typer.Option(
            "--port",
            parser=whole_number(0, 65535),
            metavar="NUMBER",
            help="The port; 0 takes a free one.",
        ),
    ] = _PORT,
    host: Annotated[
        str,
        typer.Option(
            "--host", metavar="ADDRESS", help="Another address of this computer, for other devices."
        ),
    ] = _HERE,
) -> None:
    """Share the season as a page to tick tasks off on, and as a calendar feed, until Ctrl-C.

    The addresses cannot be guessed and stay the same. Each request gets the season as it is then,
    so apps follow a new schedule by themselves. What is ticked off goes into journal.csv. Without
    --host only this computer can read it.

    Example: planner share my-garden
    """
    path = Path(folder)
    need_calendar(path)
    token = need(share_token(path))
    try:
        server = PageServer(host, port, pages_of(path, token, host, today))
    except OSError as error:
        refuse(_no_such_address(host, port, error))
    _serve(server, host, token)


def pages_of(folder: Path, token: str, host: str, day: Callable[[], date]) -> Pages:
    """Everything that is shared of a plan folder at an address; `day` tells what day it is."""
    ticks, revising = Ticks(folder, day), Revising(folder, day)
    return Pages(
        token,
        {
            LIVE: partial(shared_calendar, folder),
            "": ticks.page,
            PAGE: ticks.page,
            "note": ticks.note,
            "revision": revising.page,
        },
        names_of_this_computer(host),
        {"tick": ticks.tick, "revision": revising.step},
    )


def _serve(server: PageServer, host: str, token: str) -> None:
    try:
        with server:
            _tell(f"http://{_shown(host)}:{server.server_port}/{token}/", host)
            server.serve_forever()
    except KeyboardInterrupt:
        print("\nNo longer shared.")


def _tell(address: str, host: str) -> None:
    print(f"Subscribe to: {address}{LIVE}")
    print(f"Tick tasks off at: {address}")
    if not is_loopback(host):
        print(
            "Take care: whoever learns these addresses can read your season and write in your "
            "journal, and on the way nothing is encrypted. Share them in your own network only."
        )
    print("It is shared until you press Ctrl-C.", flush=True)


def _shown(host: str) -> str:
    """An address as it stands in a link."""
    if host in _ANYWHERE:
        return socket.gethostname()
    return f"[{host}]" if ":" in host else host


def _no_such_address(host: str, port: int, error: OSError) -> Problem:
    return Problem(
        "feed-address",
        Place(f"{host}:{port}"),
        _WHY_NOT.get(error.errno or 0, f"The computer says: {error.strerror or error}."),
        "name another port with --port, or an address of this computer with --host.",
    )
