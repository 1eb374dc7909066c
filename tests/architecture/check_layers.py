#!/usr/bin/env python3
"""The layers are what DEVELOPERS.md says they are.

Reads every #include below src/ and fails, with file and line, on one that crosses an edge the
graph does not have, on a third-party library outside the one folder that may know it, and on a
few constructs that would make a print depend on the machine it was made on.
"""
import pathlib
import re
import sys

# Which folders each folder may include from. This is the architecture; DEVELOPERS.md shows it.
MAY_KNOW = {
    "base": [],
    "unicode": ["base"],
    "toml": ["base"],
    "kitchen": ["base"],
    "intake": ["base", "toml", "kitchen"],
    "wording": ["base", "toml", "kitchen"],
    "typeset": ["base", "unicode"],
    "code": ["base", "unicode", "kitchen"],
    "layout": ["base", "toml", "wording", "typeset", "code"],
    "render": ["base", "typeset", "layout"],
    "archive": ["base", "kitchen"],
    "photo": ["base", "code"],
    "spool": ["base"],
    "service": ["base", "unicode", "toml", "kitchen", "intake", "wording", "typeset", "code",
                "layout", "render", "archive", "photo"],
    "files": ["base", "toml", "wording", "typeset", "layout", "service"],
    "library": ["base", "kitchen", "code", "layout", "render", "archive", "service", "files"],
    "json": ["base", "kitchen", "code", "wording", "archive", "service"],
    "http": ["base"],
    "desk": ["base", "unicode", "toml", "kitchen", "wording", "typeset", "code", "layout", "render",
             "archive", "service", "json", "http"],
    "app": ["base", "unicode", "toml", "kitchen", "intake", "wording", "typeset", "code",
            "layout", "render", "archive", "photo", "spool", "service", "files", "json", "http",
            "desk"],
}

# Each third-party library is included in one folder. fmt stands in for the standard library's
# <format>, which the compilers we support lack, and may be used anywhere.
THIRD_PARTY = {
    r"fmt/": None,
    r"unicode/(?!.*\.h\")": "unicode",
    r"toml\+\+/": "toml",
    r"hb": "typeset",
    r"qrcodegen/": "code",
    r"ZXing/": "code",
    r"hpdf": "render",
    r"libdeflate": "render",
    r"sqlite3": "archive",
    r"libpq-fe\.h": "archive",
    r"(png|jpeglib)\.h": "photo",
    r"cups/": "spool",
    r"CLI/": "app",
    r"nlohmann/": "json",
    r"microhttpd\.h": "http",
    r"gnutls/": "http",
}

SYSTEM = re.compile(r"^(dlfcn|fcntl|ifaddrs|unistd|dirent|arpa/inet|netinet/(in|tcp)|sys/[a-z]+|errno|poll|spawn)\.h$")

# What would make the same input give other bytes on another day or machine.
BANNED = [
    (re.compile(r"\bstd::unordered_"), {"layout", "render", "typeset", "code", "wording"},
     "order from hashing differs between libraries: use an ordered container"),
    (re.compile(r"\bsystem_clock::now|\bstd::time\(|\blocaltime"), set(MAY_KNOW) - {"app"},
     "only app/ may ask the clock"),
    (re.compile(r"#include <(iostream|ostream|istream|iosfwd|sstream|fstream|filesystem|cstdio|ctime)>|ExitStatus"),
     {"service"}, "a use case takes values and gives values: streams, files and exit status are app's"),
    (re.compile(r"\bsetlocale\b|std::locale\b"), set(MAY_KNOW), "no output depends on the locale"),
    (re.compile(r"\bstd::rand\b|\brand\(\)|random_device"), set(MAY_KNOW), "no randomness"),
    (re.compile(r"\bgetenv\b"), set(MAY_KNOW) - {"app"}, "only app/ may read the environment"),
]

LONGEST_FILE = 500


def complaints(source: pathlib.Path):
    layers = sorted(p.name for p in source.iterdir() if any(p.glob("*.h")) or any(p.glob("*.cpp")))
    for unknown in set(layers) - set(MAY_KNOW):
        yield f"{source / unknown}: error: this folder is not in the graph"
    for path in sorted(source.rglob("*")):
        if path.suffix not in {".h", ".cpp"}:
            continue
        layer = path.relative_to(source).parts[0]
        lines = path.read_text(encoding="utf-8").splitlines()
        if len(lines) > LONGEST_FILE:
            yield f"{path}:1: error: {len(lines)} lines; a file holds one idea in at most {LONGEST_FILE}"
        for number, line in enumerate(lines, 1):
            where = f"{path}:{number}: error:"
            own = re.match(r'#include "([a-z_]+)/', line)
            home = "library" if own and own[1] == "thawslip" else own and own[1]  # public headers
            if own and home != layer and home not in MAY_KNOW.get(layer, []):
                yield f"{where} {layer} may not know {home}"
            outside = re.match(r"#include <([^>]+)>", line)
            if outside and ("/" in outside[1] or "." in outside[1]):
                yield from foreign(outside[1], layer, where)
            if line.lstrip().startswith("//"):
                continue
            for pattern, layers_held, why in BANNED:
                if layer in layers_held and pattern.search(line):
                    yield f"{where} {why}"


def foreign(header: str, layer: str, where: str):
    if SYSTEM.match(header):
        return
    for pattern, home in THIRD_PARTY.items():
        if re.match(pattern, header):
            if home not in (None, layer):
                yield f"{where} <{header}> belongs in {home} alone"
            return
    yield f"{where} <{header}> is a library that no folder is named for"


def documented(developers: pathlib.Path):
    """DEVELOPERS.md draws the same graph: a table row `| layer | may know |`."""
    text = developers.read_text(encoding="utf-8")
    for layer, known in MAY_KNOW.items():
        row = re.search(rf"^\| `{layer}` \|[^|]*\|([^|]*)\|", text, re.MULTILINE)
        if not row:
            yield f"{developers}: error: there is no row for `{layer}`"
            continue
        drawn = re.findall(r"[a-z]+", row[1])
        if drawn != ["all"] and drawn != known and not (drawn == [] and known == []):
            yield f"{developers}: error: `{layer}` may know {known}, the table says {drawn}"


def main():
    root = pathlib.Path(sys.argv[1])
    found = list(complaints(root / "src")) + list(documented(root / "DEVELOPERS.md"))
    print("\n".join(found) if found else "the layers are one way")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
