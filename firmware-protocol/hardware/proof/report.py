"""The page of the proof: what the rows showed, by group."""

import re
from datetime import datetime, timezone


def number(value):
    return f"{value:.3g}" if isinstance(value, float) else str(value)


def spans(results):
    """Lowest and highest of every figure of a group."""
    keys = {}
    for got in results:
        for key, value in got.items():
            if isinstance(value, (int, float)) and not isinstance(value, bool) and key != "seconds":
                keys.setdefault(key, []).append(float(value))
    return {key: (min(values), max(values)) for key, values in keys.items()}


LIVES = ("single faults", "paths to earth", "a second supply", "chassis clip on a rail", "drifts of 5 %")


def life_table(rows, results):
    """What became of each: rows of one life of the switch at 24 V, with a short of 20 mohm on top."""
    counts = {}
    for got in results:
        counts[got.get("class", "no result")] = counts.get(got.get("class", "no result"), 0) + 1
    out = ["", ", ".join(f"{n} {name}" for name, n in sorted(counts.items())) + ".", "", "| what | becomes | how, at 24 V with a short of 20 mohm on top |", "|---|---|---|"]
    for row, got in zip(rows, results):
        reason = f" ({got['reason']})" if got.get("reason") else ""
        out.append(f"| {row.title} | {got.get('class', 'no result')} | {got.get('why', '')}{reason} |")
    return out


def left_out(groups, asked):
    """How many rows of which group are missing."""
    wanted = {}
    for row in asked:
        wanted[row.group] = wanted.get(row.group, 0) + 1
    return ", ".join(f"{count - len(groups.get(group, ()))} of {count} of \"{group}\"" for group, count in wanted.items() if count > len(groups.get(group, ())))


def broken_table(broken):
    """(protection, row or test, what failed) of what was taken away on purpose."""
    green = sum(1 for *_, failed in broken if not failed)
    out = ["## Broken once", "", f"Each protection was taken away once, alone: {len(broken)}, of which {green} were not noticed. In the netlist by `proof/prove.py KEPT --broken`, in the program by "
           "`proof/broken_program.py KEPT`.", "", "| taken away | row or test | turns red |", "|---|---|---|"]
    out += [f"| {name} | {where} | {failed or '**stays green**'} |" for name, where, failed in broken]
    return out + [""]


def program_table(program):
    """(test, what, cases, not green, names of cases, printed figures) of what ran with the program itself."""
    if not program:
        return []
    out = ["## With the program in the loop", "", "Kept by `proof/program.py KEPT` from the reports of the tests: program and circuit with `-Pfull`, the chip alone in the short size. Arming and zeros of 200 new and 200 calibrated boxes, and drawn boxes on the chip: "
           "`host/docs/verification.md`.", "", "| test | what | cases | not green |", "|---|---|---|---|"]
    out += [f"| {test} | {what}: {', '.join(words(name) for name in names)} | {cases} | {', '.join(bad) or '0'} |" for test, what, cases, bad, names, _ in program]
    figures = [line for *_, lines in program for line in lines]
    return out + [""] + [f"- {line}" for line in figures] + [""] * bool(figures)


def words(name):
    """aMotorMayStart -> a motor may start"""
    return re.sub(r"(?<=.)([A-Z])", lambda m: " " + m.group(1).lower(), name)


def page(rows, results, commit, asked, broken, program=()):
    groups = {}
    for row, got in zip(rows, results):
        groups.setdefault(row.group, []).append((row, got))
    bad = sum(1 for got in results if got["failed"])
    out = ["# Proof of the probe's circuit", "",
           f"Written by `proof/prove.py` from commit {commit or 'unknown'} on {datetime.now(timezone.utc):%Y-%m-%d %H:%M} UTC with ngspice and the models of function in "
           "`bench/models.lib` (no maker's part). **No box has been built or measured.**", "",
           "Command, in `firmware-protocol/hardware`: `python3 proof/prove.py KEPT --report proof.md` (KEPT: a folder for results; rows that are there are not run again).", "",
           "In every row of this page the simulator drives the chip's pins by the rules that the program keeps; what ran with the program itself stands near the end. "
           "In a table, *refused* = the program does not close the switch, *trips* = it opens it by itself, *harmless* = figures right and a short is cut within the ratings of the "
           "parts, *shows* = what the figures show is what is wrong, *listed* = not seen at once, with the reason.", "", f"{len(rows)} of {len(asked)} rows were run, {bad} failed." + ("" if len(rows) == len(asked) else " Those that were not run are not on this page: " + left_out(groups, asked) + "."), ""]
    for group, members in groups.items():
        these = [got for _, got in members]
        failed = [row.id for row, got in members if got["failed"]]
        out += [f"## {group}", "", f"{len(members)} rows, {len(failed)} failed." + (f" Failed: {', '.join(failed[:20])}." if failed else "")]
        if group in LIVES:
            out += life_table([row for row, _ in members], these)
        else:
            titles = list(dict.fromkeys(row.title for row, _ in members))
            if len(members) <= 20:
                out += ["", "Rows: " + "; ".join(titles) + "."]
            out += ["", "| figure | lowest | highest |", "|---|---|---|"]
            out += [f"| {key} | {number(low)} | {number(high)} |" for key, (low, high) in spans(these).items()]
        out.append("")
    out += program_table(program)
    if broken:
        out += broken_table(broken)
    return "\n".join(out)
