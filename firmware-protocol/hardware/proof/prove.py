#!/usr/bin/env python3
"""Runs the rows of the proof, each once, and keeps what came of it; a row that is there is not run again.

python3 proof/prove.py KEPT [--drawn] [--group WORD] [--jobs N] [--report FILE]      (in hardware/)
KEPT: folder for the rows' results. A row is kept under the content of netlists and benches and
the REVISION of its script (raise it when a row means something else), so a change runs it again.
Exit 1: a row failed. Only the standard library and ngspice.
"""

import argparse
import hashlib
import json
import sys
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

sys.dont_write_bytecode = True
sys.path.insert(0, str(Path(__file__).resolve().parent))

import power  # noqa: E402
import report  # noqa: E402
import faults  # noqa: E402
import inputs  # noqa: E402
import paths  # noqa: E402
import spice  # noqa: E402
from spice import HARDWARE, NoResult  # noqa: E402


MODULES = (power, faults, inputs, paths)


def content(module):
    """What a row of this module hangs on: its netlists and benches, the models, and the revision of its script."""
    files = [*(HARDWARE / "netlists" / f"{name}.cir" for name in module.NETLISTS), *(HARDWARE / "bench" / name for name in ("models.lib", "world.inc", "around.inc", "whole.inc")),
             *(HARDWARE / "bench" / f"{name}.cir" for name in module.BENCHES)]
    digest = hashlib.sha256(str(module.REVISION).encode())
    for file in files:
        digest.update(file.name.encode() + file.read_bytes())
    return digest.hexdigest()[:16]


def known(row, kept, key):
    file = kept / f"{row.id}.json"
    result = json.loads(file.read_text()) if file.exists() else None
    return result if result and result["content"] == key else None


def one(row, kept, key):
    file = kept / f"{row.id}.json"
    there = known(row, kept, key)
    if there:
        return there
    started = time.time()
    try:
        result = row.work()
    except NoResult as none:
        result = {"failed": ["no result"], "why": str(none)[:300]}
    result.update(content=key, seconds=round(time.time() - started, 1))
    file.write_text(json.dumps(result))
    return result


def in_turn(rows):
    """Indexes in the order of running: of each group its corners first, and all groups alike, so that a run that was broken off shows something of each."""
    groups = {}
    for i, row in enumerate(rows):
        groups.setdefault(row.group, []).append(i)
    turns = {}
    for members in groups.values():
        for place, i in enumerate(sorted(members, key=lambda i: not rows[i].drawn)):
            turns[i] = place / len(members)
    return sorted(turns, key=turns.get)


# A protection taken away, and the rows that have to turn red with it.
BREAKS = (
    ("limiter transistor out", "Q_Q5 ", None, "short-60V-0.02ohm-0.5u-30ms"), ("off does not reach the base", "R_R15 ", None, "drive-run-low-60V"),
    ("gate volts outlive the pulses", "C_C6 ", "C_C6 n_C6_1 FG 470n", "drive-pulses-stop-60V"), ("clamp out", "D_D1 ", None, "short-60V-0.02ohm-20u-30ms"),
    ("no fold-back", "R_R13 ", None, "closing-52V-1500uF-stiff470uF-0.5u-0C-heavy"), ("half a shunt", "R_R1 ", "R_R1 SH FG 25m", "look-12V-30ohm-0"),
    ("gate volts not seen", "R_R21 ", None, "ordinary-12V-22uF-1u"), ("gate without its capacitor", "C_C7 ", None, "plug-60V-dead-0.5u-0"), ("bleeder out", "R_R3 ", None, "bleed-24-0"), ("foot of the dividers stays", "R_R61 ", "R_R61 FOOT CH 1k", "readback-narrow"),
    ("button without its diode", "D_D21 ", None, "off-button"), ("a floating pin is pulled up", "R_R54 ", "R_R54 RUNL 5V 470", "off-pin-floats"),
    ("sense jaw joined to the other in the lead", "R_R68 ", "R_R68 CH CLIP 100k", "jaw-jaw-off-on"), ("block against a reversed supply bridged", "M_Q2 ", "R_BRK OUT FG 10m", "polarity-60V"), ("volts across not seen", "R_R16 ", None, "look-12V-210ohm-0"),
    ("pedestal of I out", "R_R27 ", None, "zeros-0"), ("pedestal of J out", "R_R45 ", None, "zeros-0"), ("a resistor of the head 20 % off", "R_R83 ", "R_R83 MID n_C83_2 1.76Meg", "rejection1"),
)


def broken(all_rows, kept):
    """Each break alone: the row that watches it has to fail. Prints what stayed green, and keeps the list for the page."""
    by_id, green, told = {row.id: row for row in all_rows}, [], []
    for name, start, instead, row_id in BREAKS:
        spice.ON_TOP[:] = [lambda file, line, a=start, b=instead: (b or "") if file.endswith(".cir") and line.startswith(a) else line]
        try:
            failed = by_id[row_id].work()["failed"]
        except NoResult as none:
            failed = [f"no result {str(none)[:80]}"]
        print(f"{name}: {row_id}: {', '.join(failed) or 'STAYED GREEN'}")
        told.append([name, row_id, ", ".join(failed)])
        green += [] if failed and not failed[0].startswith("no result") else [name]
    (kept / "broken-netlist.txt").write_text(json.dumps(told))
    return 1 if green else 0


def broken_lists(kept):
    """What was broken on purpose in netlist and program, where that was run."""
    return [entry for name in ("broken-netlist.txt", "broken-program.txt") if (kept / name).exists() for entry in json.loads((kept / name).read_text())]


def program_list(kept):
    """What program.py kept."""
    file = kept / "program.txt"
    return json.loads(file.read_text()) if file.exists() else ()


def main():
    options = argparse.ArgumentParser()
    options.add_argument("kept", type=Path)
    options.add_argument("--drawn", action="store_true")
    options.add_argument("--group", default="")
    options.add_argument("--jobs", type=int, default=2)
    options.add_argument("--report", type=Path)
    options.add_argument("--kept-only", action="store_true", help="run nothing: report the rows that are there")
    options.add_argument("--broken", action="store_true", help="break each protection once: the row that watches it has to fail")
    options.add_argument("--commit", default="")
    asked = options.parse_args()
    asked.kept.mkdir(parents=True, exist_ok=True)
    if asked.broken:
        return broken([row for module in MODULES for row in module.rows()], asked.kept)
    rows = [(row, key) for module in MODULES for key in [content(module)] for row in module.rows()
            if asked.group in row.group and (row.drawn or not asked.drawn)]
    wanted = [row for row, _ in rows]
    if asked.kept_only:
        rows = [(row, key) for row, key in rows if known(row, asked.kept, key)]
    with ThreadPoolExecutor(asked.jobs) as pool:
        running = {i: pool.submit(one, rows[i][0], asked.kept, rows[i][1]) for i in in_turn([row for row, _ in rows])}
        results = [running[i].result() for i in range(len(rows))]
    rows = [row for row, _ in rows]
    bad = [(row, got) for row, got in zip(rows, results) if got["failed"]]
    for row, got in bad:
        print(f"FAILED {row.id}: {', '.join(got['failed'])} {json.dumps({k: v for k, v in got.items() if k not in ('failed', 'content')})}")
    print(f"{len(rows)} rows, {len(bad)} failed")
    if asked.report:
        asked.report.write_text(report.page(rows, results, asked.commit, wanted, broken_lists(asked.kept), program_list(asked.kept)), encoding="utf-8")
    return 1 if bad else 0


if __name__ == "__main__":
    sys.exit(main())
