#!/usr/bin/env python3
"""The page's words: each that a module asks for is there, and every language has the same ones.

    check_page_words.py SOURCE_FOLDER
"""

import pathlib
import re
import sys
import tomllib

LANGUAGES = ("en", "es", "de")


def leaves(table, prefix=""):
    """Each text with its key, "section.key" or "section.key.form"."""
    for key, value in table.items():
        if isinstance(value, dict):
            yield from leaves(value, f"{prefix}{key}.")
        else:
            yield f"{prefix}{key}", value


def differences(tables):
    """What a language lacks, or fills in otherwise than English."""
    english = tables["en"]
    for language, words in tables.items():
        for key in english.keys() ^ words.keys():
            yield f"{language}.toml and en.toml: only one of them has {key}"
        for key in english.keys() & words.keys():
            wanted, found = (set(re.findall(r"\{\d\}", table[key])) for table in (english, words))
            # A form for one thing may say "one" instead of the figure.
            if wanted != found and not key.endswith(".one"):
                yield f"{language}.toml: {key} fills in {sorted(found)}, not {sorted(wanted)}"


def asked_for(page):
    """Keys that stand in the modules as they are, and beginnings of those that are put together."""
    for module in sorted(page.glob("*.js")):
        text = module.read_text(encoding="utf-8")
        for section_and_key in re.findall(r'"([a-z]+\.[a-z_]+)"', text):
            yield module.name, section_and_key, False
        for beginning in re.findall(r"`([a-z]+\.[a-z_]*)\$\{", text):
            yield module.name, beginning, True


def missing(page, words):
    """What a module asks for and no table has. File names look like keys, and are none."""
    sections = {key.split(".")[0] for key in words}
    known = words.keys() | {key.rsplit(".", 1)[0] for key in words}
    for module, key, is_beginning in asked_for(page):
        if key.split(".")[0] not in sections or key.endswith(".js"):
            continue
        if not any(one.startswith(key) if is_beginning else one == key for one in known):
            yield f"{module}: no language has {key}"


def main(source):
    desk = pathlib.Path(source) / "src" / "desk"
    tables = {language: dict(leaves(tomllib.loads((desk / "words" / f"{language}.toml").read_text(encoding="utf-8"))))
              for language in LANGUAGES}
    faults = [*differences(tables), *missing(desk / "page", tables["en"])]
    print("\n".join(faults) or "every word of the page is there")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1]))
