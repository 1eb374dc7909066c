#!/usr/bin/env python3
"""Holds ctest to doctest: every test case of every program is a test that ctest runs.

    check_cases.py BUILD_FOLDER PREFIX=PROGRAM...

A name that CMake or doctest's filter reads otherwise than it stands (a semicolon, the same name
twice) would leave a case that never runs and reports success.
"""

import json
import subprocess
import sys
from collections import Counter


def cases_of(program):
    """The names of a program's test cases, as doctest lists them."""
    listed = subprocess.run([program, "--list-test-cases", "--no-version"], capture_output=True,
                            text=True, check=True).stdout.splitlines()
    return [line for line in listed if not line.startswith(("[doctest]", "===="))]


def main():
    build, programs = sys.argv[1], dict(pair.split("=", 1) for pair in sys.argv[2:])
    known = json.loads(subprocess.run(["ctest", "--test-dir", build, "--show-only=json-v1"],
                                      capture_output=True, text=True, check=True).stdout)
    tests = Counter(test["name"] for test in known["tests"])
    faults = []
    for prefix, program in programs.items():
        cases = Counter(prefix + case for case in cases_of(program))
        faults += [f"stands {count} times: {name}" for name, count in cases.items() if count > 1]
        faults += [f"never runs: {name}" for name in cases if name not in tests]
    print("\n".join(faults) or f"{sum(tests.values())} tests, none left out")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
