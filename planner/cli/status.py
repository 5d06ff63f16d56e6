"""The status a run leaves with; 0 is done."""

SOMETHING_UNMET = 1
OUTPUT_LOST = 1
CANNOT_STAND = 2
INTERRUPTED = 130  # 128 and the number of the signal, as shells have it
