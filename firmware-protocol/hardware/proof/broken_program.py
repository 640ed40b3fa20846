#!/usr/bin/env python3
"""Takes each protection out of the program once, alone: a check of the program's own tests has to fail.

python3 proof/broken_program.py KEPT      (in hardware/; needs cc)
Leaves the list in KEPT for the page that prove.py writes. Exit 1: something stayed green.
"""

import json
import re
import shutil
import subprocess
import sys
import tempfile
from pathlib import Path

FIRMWARE = Path(__file__).resolve().parent.parent.parent / "firmware"

# (what, file, text, text instead)
BREAKS = (
    ("zeros outside their bands let pass", "core/arming.c", "            return false;\n    }\n    return true;", "            return true;\n    }\n    return true;"),
    ("limiter test sees nothing", "core/arming.c", "    uint16_t counts = conversion->counts;\n    if (channel == CHANNEL_I)\n        return is_over", "    uint16_t counts = 0;\n    if (channel == CHANNEL_I)\n        return is_over"),
    ("reversed supply is joined", "core/arming.c", "if (p->inputs & INPUT_SUPPLY_REVERSED)", "if (0)"),
    ("an unseen supply is let pass", "core/arming.c", "return !p->supply_seen &&", "return 0 &&"),
    ("a short in the look", "core/look.c", "    if (is_short(v, j, parameters))\n        return LOOK_SHORT;", ""),
    ("volts and current of the look need not fit", "core/look.c", "    if (!fits(look, parameters, j))\n        return LOOK_SHUNT;", ""),
    ("too much charge", "core/look.c", "    if (parameters->charge_limit == 0)", "    if (1)"),
    ("too high a supply", "core/look.c", "if (look->supply_16ths > 16u * parameters->supply_highest_counts)", "if (0)"),
    ("limiting has no end", "core/limiting.c", "    if (count > limiting->allowed)\n        return true;", ""),
    ("volts across need not fall", "core/limiting.c", "count > LIMITING_MUST_FALL && !falls", "0 && !falls"),
    ("a bouncing short counts anew", "core/limiting.c", "    if (++limiting->not_seen < LIMITING_FORGETS)\n        return;", "    limiting->count = 1;"),
    ("running and inrush limit on I", "core/trip.c", "counts > levels->i[phase] && !watch->held", "0"),
    ("running limit on J", "core/trip.c", "counts <= levels->running_j)", "1)"),
    ("heat", "core/trip.c", "    if (watch->i2t_counts2 <= watch->levels->as_given.i2t_budget)", "    if (1)"),
    ("over-voltage of V", "core/trip.c", "    if (counts <= levels->over_v || watch->volts_rest) {", "    if (1) {"),
    ("over-voltage of rails", "core/trip.c", "counts >= levels->as_given.low[rail] && counts <= levels->as_given.high[rail]", "1"),
    ("a dead current input", "core/trip.c", "    if (++watch->row_dead < DEAD_IN_ROW)", "    if (1)"),
    ("a start has no limit of its own", "core/levels.c", "    levels->i[PHASE_START] = trip_level(limits->start_i_counts, zeros->i_16ths);", "    levels->i[PHASE_START] = TRIP_NO_LEVEL;"),
    ("the gate's volts are not looked at", "core/probe.c", "    see_to_gate(p);\n", "    (void)see_to_gate;\n"),
    ("a converter that stands", "core/probe.c", "    see_to_converter(p);\n", "    (void)see_to_converter;\n"),
    ("chassis clip off while on", "core/probe.c", "        tripped_lost(p, TRIP_CHASSIS_CLIP, BY_CHASSIS_CLIP, inputs);", "        (void)p;"),
    ("a silent host", "core/probe.c", "        tripped_lost(p, TRIP_HOST_SILENCE, BY_HOST_SILENCE, 0);", "        (void)p;"),
    ("the button does not open", "core/probe.c", "if (source == PRESS_BUTTON && kind == PRESS_DOWN)", "if (0)"),
    ("the pedal does not open", "core/probe.c", "kind == press_that_opens(p->pedal_job)", "0"),
    ("current after an opening is not looked at", "core/afterwards.c", "    if (p->current_in_row >= OPEN_CURRENT_IN_ROW) {", "    if (0) {"),
    ("half a shunt is not seen once closed", "core/afterwards.c", "conversion->counts > p->shunt_over_v", "0"),
    ("opening leaves the pins", "core/guard.c", "    hal_paths_open();\n    guard->armed = false;\n    guard->on = false;\n    if (was_on)", "    guard->armed = false;\n    guard->on = false;\n    if (was_on)"),
)


def tested(firmware):
    """The first check that failed, or an empty text."""
    program = firmware / "tests"
    sources = [str(f) for part in ("core", "test") for f in sorted((firmware / part).glob("*.c"))]
    subprocess.run(["cc", "-std=c99", "-O1", "-w", "-I.", "-Itest", "-o", str(program), *sources], cwd=firmware, check=True)
    try:
        ran = subprocess.run([str(program), "../vectors"], cwd=firmware, capture_output=True, text=True, timeout=120)
    except subprocess.TimeoutExpired:
        return "the tests do not end"
    failed = re.search(r"test/(\w+_test\.c):\d+: (.*)", ran.stdout + ran.stderr)
    return f"{failed.group(1)}: {failed.group(2)}" if failed else "" if ran.returncode == 0 else f"exit {ran.returncode}"


def main():
    kept = Path(sys.argv[1])
    told = []
    with tempfile.TemporaryDirectory() as folder:
        shutil.copytree(FIRMWARE.parent / "vectors", Path(folder) / "vectors")
        for what, file, old, new in (("", None, None, None), *BREAKS):
            firmware = Path(folder) / "firmware"
            shutil.copytree(FIRMWARE, firmware, ignore=shutil.ignore_patterns("build", "fuzz"))
            if file:
                text = (firmware / file).read_text()
                if old not in text:
                    raise SystemExit(f"{file}: {what}: the text to change is not there any more")
                (firmware / file).write_text(text.replace(old, new, 1))
            failed = tested(firmware)
            shutil.rmtree(firmware)
            if not file:
                if failed:
                    raise SystemExit(f"the tests fail before anything is broken: {failed}")
                continue
            print(f"{what}: {failed or 'STAYED GREEN'}", flush=True)
            told.append([f"program: {what}", file, failed])
    (kept / "broken-program.txt").write_text(json.dumps(told))
    return 1 if any(not failed for *_, failed in told) else 0


if __name__ == "__main__":
    sys.exit(main())
