"""The files of the tree that the checks read, and how a check ends."""
import pathlib
import subprocess
import sys

GENERATED = {"build", ".cache", "node_modules", "dist", ".git", "out", "test-results", "playwright-report"}


def root(arguments):
    """The tree to look at: the first argument, else the one this file lies in."""
    return pathlib.Path(arguments[1]).resolve() if len(arguments) > 1 else pathlib.Path(__file__).resolve().parent.parent


def files(top, *suffixes):
    """Paths relative to top, tracked or new but not ignored, that exist; with one of the suffixes if any are given."""
    if (top / ".git").exists():
        listed = subprocess.check_output(["git", "-C", str(top), "ls-files", "-co", "--exclude-standard", "-z"], text=True)
        paths = [pathlib.PurePosixPath(p) for p in listed.split("\0") if p]
    else:
        paths = [pathlib.PurePosixPath(p.relative_to(top).as_posix()) for p in top.rglob("*") if p.is_file()]
    paths = [p for p in paths if not GENERATED & set(p.parts) and (top / p).is_file()]
    return sorted(p for p in set(paths) if not suffixes or p.name.endswith(suffixes))


def text(path):
    return path.read_text(encoding="utf-8", errors="replace")


def finish(name, problems, looked_at):
    """Prints every problem; ends with 1 if there is one, or if nothing was looked at."""
    for problem in problems:
        print(problem)
    if not looked_at:
        print(f"{name}: found nothing to look at")
    print(f"{name}: {looked_at} looked at, {len(problems)} problems")
    sys.exit(bool(problems) or not looked_at)
