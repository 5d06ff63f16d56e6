"""What holds for all tests."""

import signal

# Whatever started the tests may ignore Ctrl-C, as a shell lets what runs in the background do;
# the programs under test must not inherit that.
if signal.getsignal(signal.SIGINT) is signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)
