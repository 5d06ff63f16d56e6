"""How a shell completes commands: by the scripts of the library, with one of them mended."""

_SET_UP = "compdef %(complete_func)s %(prog_name)s"
_COMPLETE_OR_SET_UP = f"""\
if [[ $funcstack[1] = _%(prog_name)s ]]; then
  %(complete_func)s "$@"
else
  {_SET_UP}
fi"""


def mend_completion() -> None:
    """Let zsh complete at the first tab.

    What is installed for zsh is read when tab is first pressed, and has to complete then, not only
    to be set up for the next time.
    """
    try:
        from typer._completion_shared import _completion_scripts as scripts  # noqa: PLC0415
    except ImportError:  # the library's own matter, and no reason to stop
        return
    scripts["zsh"] = scripts["zsh"].replace(f"\n{_SET_UP}", f"\n{_COMPLETE_OR_SET_UP}")
