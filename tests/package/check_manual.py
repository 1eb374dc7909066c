#!/usr/bin/env python3
"""The manual page and the completions say what the program says, no less and no more.

    check_manual.py THAWSLIP MANUAL COMPLETIONS

Asks the program for the help of every command, and fails on a command or an option that the page
or a shell's completions lack, or that only they have. A shell that is not installed is named and
passed over.
"""
import os
import pathlib
import re
import shutil
import subprocess
import sys
import tempfile

PROGRAM, MANUAL, COMPLETIONS = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])


def output(*words, **more):
    return subprocess.run(words, capture_output=True, text=True, check=True, **more).stdout


def told(path=()):
    """{("stock", "show"): {"--output", "--help"}, …}, as `--help` tells it."""
    text = output(PROGRAM, *path, "--help")
    options = set(re.findall(r"^  (?:-\w, )?(--[a-z-]+)", text, re.MULTILINE))
    commands = re.search(r"^Commands:\n((?:  .*\n)+)", text, re.MULTILINE)
    known = {path: options}
    for name in re.findall(r"^  ([a-z][a-z-]*)  ", commands[1] if commands else "", re.MULTILINE):
        known |= told((*path, name))
    return known


def leaves(known):
    """Commands that do something: those that no other stands below."""
    return {path for path in known if path and not any(p[:-1] == path for p in known if p)}


def manual_complaints(known):
    text = MANUAL.read_text(encoding="utf-8")
    parts = re.split(r"^\.S[hs] ", text.partition(".Sh COMMANDS")[2].partition(".Sh OPTIONS")[0],
                     flags=re.MULTILINE)[1:]
    sections = {tuple(part.split("\n", 1)[0].split()): part for part in parts}
    for path in leaves(known) - set(sections):
        yield f"{MANUAL}: error: there is no subsection for {' '.join(path)}"
    for path in set(sections) - leaves(known):
        yield f"{MANUAL}: error: there is no command {' '.join(path)}"
    for path in leaves(known) & set(sections):
        synopsis = sections[path].partition(".Pp")[0]
        shown = {"-" + word for word in re.findall(r"\bFl (-[a-z][a-z-]*)", synopsis)}
        yield from differences(f"{MANUAL}: error: {' '.join(path)}", shown,
                               known[path] - {"--help"})
    explained = {"-" + word for line in re.findall(r"^\.It (.*)", text, re.MULTILINE)
                 for word in re.findall(r"\bFl (-[a-z][a-z-]*)", line)}
    yield from differences(f"{MANUAL}: error: what is explained", explained,
                           set().union(*known.values()))


def bash_complaints(known):
    """Completes in a real bash, as it would when somebody presses the tabulator."""
    script = COMPLETIONS / "thawslip"
    for path, options in known.items():
        for typed, wanted in (("--", options | known[()]), ("", below(path, known))):
            if typed == "" and not wanted:
                continue
            words = ["thawslip", *path, typed]
            quoted = " ".join(f"'{word}'" for word in words)
            shown = output("bash", "-c", f"compopt() {{ :; }}; . {script}; COMP_WORDS=({quoted}); "
                           f"COMP_CWORD={len(words) - 1}; _thawslip; printf '%s\\n' "
                           '"${COMPREPLY[@]}"')
            yield from differences(f"{script}: error: {' '.join(words)}", set(shown.split()),
                                   wanted)


def fish_complaints(known, home):
    script = COMPLETIONS / "thawslip.fish"
    for path, options in known.items():
        for typed, wanted in (("--", options | known[()]), ("", below(path, known))):
            if typed == "" and not wanted:
                continue
            line = " ".join(["thawslip", *path, typed])
            shown = output("fish", "--no-config", "-c", f"source {script}; complete -C '{line}'",
                           env={**os.environ, "HOME": home})
            yield from differences(f"{script}: error: {line}",
                                   {row.split("\t")[0].rstrip("=") for row in shown.splitlines()},
                                   wanted)


def zsh_complaints(known):
    """zsh completes only at a terminal: its functions are read and their words compared."""
    script = COMPLETIONS / "_thawslip"
    output("zsh", "-n", str(script))
    text = script.read_text(encoding="utf-8")
    takes_value = {name for path in [()] for name in known[path] - {"--help", "--version"}}
    for path, options in known.items():
        function = "_".join(["_thawslip", *path])
        body = re.search(rf"^{function}\(\) {{\n(.*?)^}}", text, re.MULTILINE | re.DOTALL)
        if not body:
            yield f"{script}: error: there is no function {function}"
            continue
        shown = set(re.findall(r"(?:^        '|,)(--[a-z-]+)", body[1], re.MULTILINE))
        yield from differences(f"{script}: error: {function}", shown,
                               options | (takes_value if path else known[()]))
        yield from differences(f"{script}: error: {function}",
                               set(re.findall(r"^                '([a-z][a-z-]*):", body[1], re.MULTILINE)),
                               below(path, known))


def below(path, known):
    return {p[-1] for p in known if p and p[:-1] == path}


def differences(where, shown, wanted):
    for name in sorted(wanted - shown):
        yield f"{where}: {name} is missing"
    for name in sorted(shown - wanted):
        yield f"{where}: {name} is not in the program's help"


def main():
    known = told()
    found = list(manual_complaints(known)) + list(bash_complaints(known))
    with tempfile.TemporaryDirectory() as home:
        for shell, complaints in (("zsh", lambda: zsh_complaints(known)),
                                  ("fish", lambda: fish_complaints(known, home))):
            if shutil.which(shell):
                found += complaints()
            else:
                print(f"not checked: {shell} is not installed")
    print("\n".join(found) if found else f"{len(leaves(known))} commands are told alike")
    return 1 if found else 0


if __name__ == "__main__":
    sys.exit(main())
