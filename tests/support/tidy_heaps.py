"""The sources that tests/tidy reads, on standard output with a null byte behind each; their compilation
database goes to <build>/tidy.

    tidy_heaps.py <build> [REGEX | --newest]

Files that share a heap in the build share it here. Of those compiled alone, for another file of their layer
has a name of theirs, one of each layer is put into a heap: no two of those share a namespace.
"""

import json
import pathlib
import re
import sys

from newest import TREE, newest_files


def sources_of(entry):
    """The files of src/ that an entry of the database compiles."""
    path = pathlib.Path(entry["file"])
    if path.suffix != ".cxx":
        return [path]
    return [pathlib.Path(name) for name in re.findall(r'#include "(.*)"', path.read_text(encoding="utf-8"))]


def own(path):
    """The path below the tree; None of what is made, and of what is no part of src/."""
    name = path.relative_to(TREE) if path.is_relative_to(TREE) else path
    return name if name.parts[0] == "src" else None


def command_for(heap, entries):
    """How the first is compiled, where also the others find what they include."""
    command = entries[0]["command"].replace(entries[0]["file"], str(heap))
    words = [word for entry in entries for word in entry["command"].split(" ")]
    found = [word for word in words if word.startswith(("-I", "-D"))]
    system = [f"-isystem {after}" for word, after in zip(words, words[1:]) if word == "-isystem"]
    return " ".join([command, *dict.fromkeys(found + system)])


def mixed_heaps(alone, folder):
    """Entries of heaps that have one file of each layer."""
    layers = {}
    for entry in alone:
        layers.setdefault(own(pathlib.Path(entry["file"])).parts[1], []).append(entry)
    for number in range(max(map(len, layers.values()), default=0)):
        files = [entries[number] for entries in layers.values() if number < len(entries)]
        heap = folder / f"alone_{number}.cpp"
        heap.write_text("".join(f'#include "{entry["file"]}"\n' for entry in files), encoding="utf-8")
        yield {"directory": files[0]["directory"], "command": command_for(heap, files), "file": str(heap)}


def chosen(entries, wanted):
    """The entries with a file that is wanted, each file once; heaps first, files alone put together."""
    seen = set()
    heaps, alone = [], []
    for entry in entries:
        sources = [path for path in map(own, sources_of(entry)) if path and path not in seen]
        if any(wanted(path) for path in sources):
            seen.update(sources)
            (heaps if entry["file"].endswith(".cxx") else alone).append(entry)
    return heaps, alone


def main():
    build = TREE / sys.argv[1]
    asked = sys.argv[2] if len(sys.argv) > 2 else ""
    if asked == "--newest":
        newest = newest_files()
        wanted = lambda path: path.with_suffix("") in newest
    else:
        wanted = lambda path: re.search(asked, str(path))
    folder = build / "tidy"
    folder.mkdir(exist_ok=True)
    heaps, alone = chosen(json.loads((build / "compile_commands.json").read_text(encoding="utf-8")), wanted)
    entries = heaps + list(mixed_heaps(alone, folder))
    (folder / "compile_commands.json").write_text(json.dumps(entries), encoding="utf-8")
    print("".join(entry["file"] + "\0" for entry in entries), end="")


main()
