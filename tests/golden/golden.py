"""What the golden tests share: cases, and the frames that the program draws for one.

A case is a folder with
  command        the arguments, without days and destination: `labels --stock a4-2x7-99x38mm`
  day.toml       the day that is printed
  settings.toml  the settings that hold
  frames.txt     every sheet in words, as `-o frames.txt` writes it; of `check`, which draws none,
                 and of `plan`, what the program says stands first
"""

import os
import shlex
import subprocess
import tempfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path

HERE = Path(__file__).resolve().parent


@dataclass(frozen=True)
class Case:
    folder: Path

    @property
    def name(self):
        return self.folder.name

    @property
    def frames(self):
        return self.folder / "frames.txt"

    def golden(self):
        """The frames that are held to be right; empty where none are blessed yet."""
        return self.frames.read_text(encoding="utf-8") if self.frames.exists() else ""


def cases(names=()):
    """The cases of these names, or all of them, by name."""
    found = [Case(path.parent) for path in sorted(HERE.glob("*/command"))]
    unknown = set(names) - {case.name for case in found}
    if unknown:
        raise SystemExit(f"error: there is no case {', '.join(sorted(unknown))}")
    return [case for case in found if not names or case.name in names]


def draw(program, case):
    """What the program says of a case now and the frames that it draws, or why it does neither.

    A plan that cannot be kept is drawn all the same: below its exit status.
    """
    with tempfile.TemporaryDirectory() as name:
        out = Path(name) / "frames.txt"
        words = shlex.split((case.folder / "command").read_text(encoding="utf-8"))
        record = ["--no-archive"] if words[0] in ("labels", "cards") else []
        to = [] if words[0] == "check" else ["-o", out]
        environment = dict(os.environ, HOME=name, XDG_DATA_HOME=name, XDG_CONFIG_HOME=name,
                           LC_ALL="C.UTF-8", TZ="UTC", SOURCE_DATE_EPOCH="1792238400")
        run = subprocess.run(
            [program, *words, *record, "--settings", case.folder / "settings.toml",
             case.folder / "day.toml", *to],
            capture_output=True, text=True, timeout=300, env=environment,
            stdin=subprocess.DEVNULL, check=False)
        # What others say has the name of the folder in it.
        drawn = run.stdout if words[0] in ("check", "plan") else ""
        drawn += out.read_text(encoding="utf-8") if out.exists() else ""
        if run.returncode == 0 and drawn:
            return drawn
        said = run.stderr.replace(str(HERE) + "/", "")
        return f"refused ({run.returncode})\n{drawn or said}"


def draw_all(program, wanted):
    """Cases with what is drawn for each, in order, on all processors."""
    with ThreadPoolExecutor(max_workers=os.cpu_count()) as pool:
        return list(zip(wanted, pool.map(lambda case: draw(program, case), wanted)))
