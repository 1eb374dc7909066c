"""What the newest commits changed, for checks that would take too long over everything.

    newest.py        the sources of src/ among it, a line each
"""

import datetime
import pathlib
import subprocess

TREE = pathlib.Path(__file__).resolve().parents[2]
NEWEST = datetime.timedelta(hours=12)


def git(*words):
    return subprocess.run(["git", *words], cwd=TREE, check=True, capture_output=True, text=True).stdout


def newest_files():
    """What changed in the newest commit and those of the twelve hours before it, and what lies changed in
    the tree; stems, since a header is looked at with its source."""
    last = datetime.datetime.fromisoformat(git("log", "-1", "--format=%cI").strip())
    before = git("rev-list", "-1", f"--before={(last - NEWEST).isoformat()}", "HEAD").strip()
    changed = git("diff", "--name-only", before or git("hash-object", "-t", "tree", "/dev/null").strip())
    return {pathlib.PurePath(name).with_suffix("") for name in changed.split("\n") if name}


def main():
    for stem in sorted(newest_files()):
        source = TREE / stem.with_suffix(".cpp")
        if stem.parts[0] == "src" and source.exists():
            print(source)


if __name__ == "__main__":
    main()
