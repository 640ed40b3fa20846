"""Runs one bench of hardware/bench in ngspice, in a folder of its own, with parameters, parts and wires changed."""

import os
import re
import subprocess
import tempfile
from pathlib import Path

HARDWARE = Path(__file__).resolve().parent.parent
RESULT = re.compile(r"(?m)^(\w+)\s+=\s+([-+.\de]+)")
SECONDS = 240


# Edits that every run gets besides its own: a protection broken on purpose.
ON_TOP = []


class NoResult(Exception):
    pass


def changed(name, text, edits):
    """One file with its edits: (file, function of a line -> line or None for 'leave it')."""
    rows = []
    for line in text.split("\n"):
        for edit in edits:
            line = edit(name, line)
        rows.append(line)
    return "\n".join(rows)


def params(values):
    """Sets parameters where they are declared; an unknown one is an error, seen by the caller through 'used'."""
    used = set()

    def edit(_, line):
        if not line.startswith(".param"):
            return line
        for key, value in values.items():
            line, n = re.subn(rf"(\b{key}=)[^ ]+", lambda m: f"{m.group(1)}{value}", line)
            if n:
                used.add(key)
        return line

    return edit, used


def once(bench, values, edits=(), options=""):
    edit, used = params(values)
    with tempfile.TemporaryDirectory() as folder:
        for part in ("bench", "netlists"):
            (Path(folder) / part).mkdir()
            for file in sorted((HARDWARE / part).iterdir()):
                text = changed(file.name, file.read_text(), [edit, *ON_TOP, *edits])
                if file.name == f"{bench}.cir" and options:
                    text = text.replace("\n.end", f"\n{options}\n.end")
                (Path(folder) / part / file.name).write_text(text)
        missing = set(values) - used
        if missing:
            raise ValueError(f"{bench}: no parameter is called {', '.join(sorted(missing))}")
        try:
            out = subprocess.run(["ngspice", "-b", f"bench/{bench}.cir"], cwd=folder, capture_output=True, text=True, timeout=SECONDS,
                                 env={**os.environ, "OMP_NUM_THREADS": "1"}).stdout
        except subprocess.TimeoutExpired as late:
            raise NoResult(f"{bench}: not finished in {SECONDS} s") from late
    got = {k: float(v) for k, v in RESULT.findall(out)}
    if not got:
        raise NoResult(f"{bench}: {out[-400:]}")
    return got


def run(bench, values, edits=(), need="ipk", options=""):
    """A run that does not converge is tried again with leads 3 % and 6 % longer; which one it was is told."""
    for longer in (1, 1.03, 1.06):
        tried = dict(values)
        if longer > 1:
            if "lead" not in tried:
                break
            tried["lead"] = f"{float(str(tried['lead']).replace('u', 'e-6')) * longer:.4g}"
        try:
            got = once(bench, tried, edits, options)
        except NoResult:
            continue
        if need in got:
            return got
    raise NoResult(f"{bench} {values}: the simulator gave no {need}")
