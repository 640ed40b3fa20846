"""Rows about what does not belong there: a path from the chassis to a pole of the supply, a second supply, the chassis clip on a rail; and parts
that drifted by 5 %.

Each lives through off, limiter test, look, on, a short and off, as the single faults do, and is judged by the same rules.
"""

import re

import faults
from power import Row, safe_share
from spice import once, run

BENCHES = ("paths", "fault")
NETLISTS = faults.NETLISTS
REVISION = 2
VALUES = dict(faults.VALUES, ilim=3)
NORMAL = {}
WHEN = {"before arming": "0", "in the look": "11m", "while on": "20m", "with a short": "24.2m", "at off": "25.1m"}


def normal():
    if not NORMAL:
        NORMAL.update(once("paths", VALUES))
    return NORMAL


def unsafe(got):
    """What must not happen whatever is joined."""
    share = safe_share(got["ppk"], got["e_end"])
    most = max(got["ipk"], -got["ilow"])
    wrong = []
    if abs(got["i_end"]) > 5e-3:
        wrong.append(f"{got['i_end']:.3g} A left after off")
    if share > 1 or got["vdspk"] > 200 or most > 200:
        wrong.append(f"{most:.0f} A, safe area {share:.2f}, {got['vdspk']:.0f} V")
    return wrong


def figures(got):
    """Readings while on against what is so: (the largest error as a share, sentence)."""
    j, v = (got["j_on"] - got["j_off"]) / 10.24, (got["v_on"] - got["v_off"]) / 4.096 * 61.594
    wrong = max(abs(j - got["amps_on"]) - 1e-3, 0) / max(abs(got["amps_on"]), 0.02), abs(v - got["set_on"]) / max(abs(got["set_on"]), 1)
    return max(wrong), f"J {j:.3f} A for {got['amps_on']:.3f}, V {v:.1f} for {got['set_on']:.1f}"


def told(kind, why, wrong=(), reason=""):
    return {"failed": list(wrong), "class": kind, "why": why, "reason": reason}


def path(chassis, pole, ohm, when):
    got = once("paths", dict(VALUES, chassis=chassis, pole=pole, pathohm=ohm, joined=WHEN[when]))
    wrong = unsafe(got)
    if got["set_end"] > 0.5:
        wrong.append(f"{got['set_end']:.1f} V on the set after off")
    refused = faults.refusal(got, normal())
    if refused:
        return told("refused", refused, wrong)
    if got["set_on"] < 0.9 * 24:
        return told("shows", f"the supply is pulled down to {got['set_on']:.1f} V, which V reads; nothing of it passes through the set", wrong)
    error, sentence = figures(got)
    if error > 0.02:
        wrong.append(sentence)
    taken = abs(24 / ohm) if pole != chassis else 0
    return told("harmless", sentence, wrong, f"{min(taken, 3):.3g} A past box and set" if taken > 1e-3 else "")


def second(volts, when):
    """A second supply across the set, 3 A. Before arming it is refused; later our switch cannot take it away, and V says so after off."""
    got = once("paths", dict(VALUES, second=volts, joined=WHEN[when]))
    wrong = unsafe(got)
    stays = (got["v_end"] - normal()["v_off"]) / 4.096 * 61.594
    refused = faults.refusal(got, normal())
    if refused:
        return told("refused", refused, wrong)
    if not wrong and abs(stays - got["set_end"]) > 0.05 * got["set_end"] + 0.2:
        wrong.append(f"V reads {stays:.2f} after off, {got['set_end']:.2f} is there")
    return told("listed", f"after off V reads what stays ({stays:.2f} V over the short)", wrong,
                f"while on current comes from both: {got['amps_on']:.2f} A through the box. One box switches one supply")


def on_rail(share):
    """The chassis clip on a rail: it follows the set's volts once they come."""
    def edit(name, line):
        if line == "RCHG CH 0 10m":
            return f"BRCHG CH 0 V={share}*V(setp,setm)"
        if name == "fault.cir":  # the chip reads against its own ground
            line = re.sub(r"v\((adc_[ijv]|across|rev)\)", r"v(own_\1)", line)
            if line.startswith(".tran"):
                line += "".join(f"\nB{pin} own_{pin} 0 V=V({pin},CH)" for pin in ("adc_i", "adc_j", "adc_v", "across", "rev"))
        return line

    got = run("fault", VALUES, [edit])
    wrong = [w for w in unsafe({**got, "ilow": 0})]
    refused = faults.refusal(got, faults.normal())
    if refused:
        return told("refused", refused, wrong)
    error, sentence = figures(got)
    if error > 0.05:
        wrong.append(sentence)
    return told("harmless", sentence, wrong, "current and volts of the supply do not hang on it; the rails are off by the volts of the rail")


def drift(line, factor):
    words = line.split(" ")
    words[-1] = f"{{{words[-1]}*{factor}}}"
    values = dict(faults.VALUES, chassis=int(words[0] in ("R_R112", "R_R113", "R_R116")))
    got = run("fault", values, [faults.replaced(line, " ".join(words))])
    kind, why = faults.judge(got, faults.normal())
    if kind in ("refused", "trips", "off"):
        return told(kind, why)
    error, sentence = figures({**got, "amps_on": got["set_on"] / 100})
    if kind == "silent" or error > 0.07:
        return told("silent", why, [why if kind == "silent" else sentence])
    if error < 0.02:
        return told("harmless", sentence)
    return told("listed", sentence, (), "wrong by no more than the drift: the monthly check with a meter shows it")


def drifting():
    for line in faults.sheets():
        words = line.split(" ")
        if faults.sensed(words[0][2:]) and words[0][0] in "RC" and re.fullmatch(r"[0-9.]+(Meg|[mkunp]?)", words[-1]) and words[-1] not in ("1m", "10m", "1G"):
            yield words[0][2:], line


def rows():
    made = []
    for chassis in (0, 1):
        for pole in (0, 1):
            for ohm in (0.2, 10, 1000, 100000):
                for when in WHEN:
                    name = f"{'live pole' if pole == chassis else 'other pole'}, module in the {'plus' if chassis == 0 else 'minus'} lead, {ohm:g} ohm, {when}"
                    made.append(Row(f"path-{chassis}-{pole}-{ohm:g}ohm-{when.replace(' ', '-')}", "paths to earth", f"chassis to {name}",
                                    lambda a=(chassis, pole, ohm, when): path(*a), ohm == 0.2 and pole == chassis and when == "while on"))
    for volts in (12, 24, 30):
        for when in WHEN:
            made.append(Row(f"second-{volts}V-{when.replace(' ', '-')}", "a second supply", f"{volts} V {when}", lambda a=(volts, when): second(*a), volts == 24 and when == "before arming"))
    for share in (1, 0.33, -0.33):
        made.append(Row(f"clip-on-rail-{share:g}", "chassis clip on a rail", f"rail of {share:g} of the supply", lambda s=share: on_rail(s), share == 1))
    for ref, line in drifting():
        for factor in (1.05, 0.95):
            made.append(Row(f"drift-{ref}-{factor:g}", "drifts of 5 %", f"{ref} {'+' if factor > 1 else '-'}5 %", lambda a=(line, factor): drift(*a), (ref, factor) == ("R1", 1.05)))
    return made
