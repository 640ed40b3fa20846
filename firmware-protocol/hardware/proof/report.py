"""The page of the proof: what the rows showed, by group."""

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


def fault_table(rows, results):
    counts = {}
    for got in results:
        counts[got.get("class", "no result")] = counts.get(got.get("class", "no result"), 0) + 1
    out = ["", ", ".join(f"{n} {name}" for name, n in sorted(counts.items())) + ".", "", "| part | fault | becomes | how, at 24 V with a short of 20 mohm on top |", "|---|---|---|---|"]
    for row, got in zip(rows, results):
        ref, _, what = row.title.partition(" ")
        reason = f" ({got['reason']})" if got.get("reason") else ""
        out.append(f"| {ref} | {what} | {got.get('class', 'no result')} | {got.get('why', '')}{reason} |")
    return out


def page(rows, results, commit, asked_for):
    groups = {}
    for row, got in zip(rows, results):
        groups.setdefault(row.group, []).append((row, got))
    bad = sum(1 for got in results if got["failed"])
    out = ["# Proof of the probe's circuit", "",
           f"Written by `proof/prove.py` from commit {commit or 'unknown'} on {datetime.now(timezone.utc):%Y-%m-%d %H:%M} UTC with ngspice and the models of function in "
           "`bench/models.lib` (no maker's part). **No box has been built or measured.**", "",
           "Command, in `firmware-protocol/hardware`: `python3 proof/prove.py KEPT --report proof.md` (KEPT: a folder for results; rows that are there are not run again).", "",
           "In every row of this page the simulator drives the chip's pins by the rules that the program keeps; rows with the program itself in the loop are those of "
           "`CosimulationTest`.", "", f"{len(rows)} of {asked_for} rows were run, {bad} failed." + ("" if len(rows) == asked_for else " Those that were not run are not on this page."), ""]
    for group, members in groups.items():
        these = [got for _, got in members]
        failed = [row.id for row, got in members if got["failed"]]
        out += [f"## {group}", "", f"{len(members)} rows, {len(failed)} failed." + (f" Failed: {', '.join(failed[:20])}." if failed else "")]
        if group == "single faults":
            out += fault_table([row for row, _ in members], these)
        else:
            out += ["", "| figure | lowest | highest |", "|---|---|---|"]
            out += [f"| {key} | {number(low)} | {number(high)} |" for key, (low, high) in spans(these).items()]
        out.append("")
    return "\n".join(out)
