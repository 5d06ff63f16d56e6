"""What this computer is called, and which names and numbers lead to it."""

import socket
from ipaddress import ip_address

_LOOPBACK = frozenset({"localhost", "127.0.0.1", "::1"})


def is_loopback(host: str) -> bool:
    """Whether a name leads to this computer and no other."""
    if host.lower() == "localhost":
        return True
    return is_number(host) and ip_address(host).is_loopback


def is_number(host: str) -> bool:
    """Whether a computer is named by its number, IPv4 or IPv6; nobody can point one elsewhere."""
    try:
        ip_address(host)
    except ValueError:
        return False
    return True


def names_of_this_computer(address: str) -> frozenset[str]:
    """The names under which requests may come in at an address; * stands for any number.

    A name that was pointed at this computer by someone else is none of them; a number cannot
    be pointed.
    """
    if address in _LOOPBACK:
        return _LOOPBACK
    own = socket.gethostname().lower()
    return _LOOPBACK | {address.lower(), own, f"{own.partition('.')[0]}.local", "*"}
