"""Rows about the way of the current: closing, shorts, drive. Each row runs one bench of its own; ngspice drives the pins, no program."""

import math
import random
import re
from dataclasses import dataclass
from typing import Callable

import spice

BENCHES = ("closing",)
NETLISTS = ("supply-module", "drive")
REVISION = 2

# Weakest ratings of parts.csv. The safe area: 60 V 6 A, 40 V 9 A, 24 V 15 A for 10 ms, all 360 W; other lengths by the square root of time
# (rule of handbooks for single pulses, from memory).
SAFE_WATTS, SAFE_S = 360, 10e-3
SWITCH_V, SWITCH_A = 200, 200
CLAMP_J = 0.25  # 1.5 kW for 1 ms is 15 kW for some 15 us (usual curve of its class, from memory)
SHARE = 0.8
LOOK_OHM, LOOK_S = 330, 3
TRIP_S = 1.1e-3  # 17 polls of 62.5 us and one missed


def ammeter(name, line):
    """In the clamp's lead: what the simulator says of a diode that breaks down is now and then far off, for one point."""
    if line.startswith("D_D1 SH "):
        return "VCLAMP SH clampd 0\n" + line.replace("D_D1 SH ", "D_D1 clampd ")
    if name == "closing.cir" and line.startswith(".save "):
        return line + " i(vclamp)\n.meas tran clampq integ i(vclamp) from=50u"
    return line


def run(bench, values, edits=(), **more):
    return spice.run(bench, values, [*edits, ammeter], **more)


@dataclass
class Row:
    id: str
    group: str
    title: str
    work: Callable[[], dict]
    drawn: bool = False


def safe_share(watts, joules):
    """Rectangular pulse of the same height and energy against the safe area."""
    return math.sqrt(max(0, watts) * max(0, joules) / SAFE_S) / SAFE_WATTS


def after_look(volts, farad, ohm):
    joined = LOOK_OHM * ohm / (LOOK_OHM + ohm)
    return (volts - 0.6) * ohm / (ohm + LOOK_OHM) * (1 - math.exp(-LOOK_S / (joined * farad)))


def shares(got):
    return {"safe area": safe_share(got["ppk"], got["ej"]), "volts": got["vdspk"] / SWITCH_V, "amperes": got["ipk"] / SWITCH_A,
            "clamp": max(0, -got.get("clampq", 0)) * 95 / CLAMP_J}


def told(got, checks, **more):
    """What a row leaves: figures, and the names of the checks that failed."""
    return {"failed": [name for name, good in checks.items() if not good], **{k: float(f"{v:.4g}") for k, v in more.items()}}


def parts(seed):
    """Parts drawn within their tolerances, the same for one seed."""
    draw = random.Random(seed)
    factor = {}

    def edit(name, line):
        words = line.split(" ")
        if name.endswith(".cir") and words[0][:2] in ("R_", "C_") and re.fullmatch(r"[0-9.]+(Meg|[mkunp]?)", words[-1]) and words[-1] not in ("1m", "1G"):
            factor.setdefault(words[0], draw.uniform(0.99, 1.01) if words[0].startswith("R_") else draw.uniform(0.95, 1.05))
            words[-1] = f"{{{words[-1]}*{factor[words[0]]:.5f}}}"
            return " ".join(words)
        if line.startswith(".model QN "):
            return line.replace("Bf=200", f"Bf={draw.uniform(100, 300):.0f}").replace("Is=1.4e-14", f"Is={1.4e-14 * 2.2 ** draw.uniform(-1, 1):.3g}")
        if line.startswith(".model NPL200 "):
            return line.replace("Vto=3.6", f"Vto={draw.uniform(2.5, 4):.2f}").replace("Kp=22", f"Kp={draw.uniform(15, 30):.1f}")
        return line

    return edit


# -- closing -------------------------------------------------------------------------------------------------------------------

def closing(volts, uf, supply, load_ohm, lead, celsius, chassis=0, motor=1e9, seed=None, looked=True):
    """Closes onto a healthy set; the time rules of the program are applied to what the bench shows."""
    farad = uf * 1e-6
    ohm = 1 / (1 / load_ohm + 1 / motor)
    v0 = after_look(volts, farad, ohm) if looked else 0
    ilim, csup, esr = supply
    tend = 3e-3 + max(6e-3, min(45e-3, 4 * farad * (volts - v0) / 3))
    values = dict(volts=volts, cset=f"{uf}u", esrset="30m" if uf > 2000 else "80m", rset=f"{load_ohm:.5g}", rmotor=f"{motor:.5g}", v0=f"{v0:.4g}", lead=lead,
                  ilim=ilim, csup=csup, esr=esr, chassis=chassis, tend=f"{tend:.4g}")
    got = run("closing", values, [parts(seed)] if seed is not None else [], options=f".options temp={celsius}")
    share = shares(got)
    longest = 15e-3 if volts <= 15 else 10e-3
    rest = (volts - got["vset3"]) / (volts - got["vset0"])
    end = got["vend"] / volts
    return told(got, {"limiting too long": got["tlim"] < longest, "five sixths": got["tlim"] < 2.9e-3 or rest < 5 / 6, "dark before": got["idark"] < 5e-3,
                      "arrived": end > (0.8 if ilim > 100 else 0.5), "gate seen": got["gateseen"] < 1, **{k: v < SHARE for k, v in share.items()}},
                joule=0.5 * farad * (volts - v0) ** 2, amperes=got["ipk"], limitedMs=got["tlim"] * 1e3, rest=rest, end=end, **{f"share {k}": v for k, v in share.items()})


STIFF, CURRENT_LIMITED, BATTERY = (1000, "470u", "50m"), (3, "2200u", "50m"), (1000, "1n", "50m")
SUPPLIES = {"stiff 470 uF": STIFF, "3 A 2200 uF": CURRENT_LIMITED, "battery": BATTERY}
DOMAIN = ((3, 22), (3, 4700), (12, 22), (12, 4700), (24, 22), (24, 4700), (40, 22), (40, 2200), (52, 1500), (60, 22), (60, 1000))


# Sets that a hard switch would have called a short: volts, ohm, uF, uF of the supply, lead, whether there was a look.
ORDINARY = ((12, 210, 1000, 470, "1u", True), (12, 210, 22, 470, "1u", True), (9, 150, 22, 100, "1u", True), (12, 210, 470, 470, "10u", True), (12, 210, 100, 470, "10u", True),
            (24, 300, 470, 470, "1u", True), (40, 400, 1000, 470, "1u", False), (60, 600, 1000, 470, "1u", False))


def ordinary():
    rows = []
    for volts, ohm, uf, csup, lead, looked in ORDINARY:
        rows.append(Row(f"ordinary-{volts}V-{uf}uF-{lead}", "closing, ordinary sets", f"{volts} V, {ohm} ohm, {uf} uF{'' if looked else ', without a look'}",
                        lambda a=(volts, uf, (1000, f"{csup}u", "50m"), ohm, lead, 27), k=looked: closing(*a, looked=k), (volts, uf) == (12, 1000)))
    for volts, uf, leads in ((12, 470, "all"), (12, 1000, "all"), (24, 470, "all"), (24, 1000, "all"), (40, 470, "all"), (40, 1000, "all"), (60, 470, "all"),
                             (12, 22, "5u"), (12, 4700, "5u"), (24, 22, "5u"), (24, 4700, "5u"), (40, 22, "5u"), (60, 22, "5u"), (60, 1000, "5u")):
        for lead in ("0.5u", "5u", "20u") if leads == "all" else (leads,):
            for supply in ("stiff 470 uF", "3 A 2200 uF"):
                for amps in (0.05, 1.5):
                    rows.append(Row(f"grid-{volts}V-{uf}uF-{supply}-{lead}-{amps}A".replace(" ", ""), "closing, grid", f"{volts} V {uf} uF",
                                    lambda a=(volts, uf, SUPPLIES[supply], volts / amps, lead, 27): closing(*a)))
    return rows


def closings():
    rows = []
    for i, (volts, uf) in enumerate(DOMAIN):
        for supply in SUPPLIES:
            for lead in ("0.5u", "20u"):
                for celsius in (0, 60):
                    for load in ("light", "heavy"):
                        ohm = volts / (0.05 if load == "light" else 1.5)
                        rows.append(Row(f"closing-{volts}V-{uf}uF-{supply}-{lead}-{celsius}C-{load}".replace(" ", ""), "closing", f"{volts} V {uf} uF",
                                        lambda a=(volts, uf, SUPPLIES[supply], ohm, lead, celsius, (i + celsius) % 2): closing(*a),
                                        supply.startswith("stiff") and load == "heavy" and (lead, celsius) == ("0.5u", 60) and volts in (12, 24, 40, 60)))
    for volts, uf in ((12, 1000), (12, 4700), (24, 1000)):
        for celsius in (0, 60):
            rows.append(Row(f"closing-motor-{volts}V-{uf}uF-{celsius}C", "closing", f"{volts} V {uf} uF and a motor or cold lamp of 20 ohm",
                            lambda a=(volts, uf, STIFF, volts / 1.0, "1u", celsius, 0, 20): closing(*a), celsius == 60 and uf == 1000))
    for n in range(200):
        draw = random.Random(1000 + n)
        volts = round(draw.uniform(3, 60), 1)
        uf = round(min(4700, 22 * (min(4700, 2 * 2.0e6 / volts ** 2) / 22) ** draw.random()))
        if volts > 52:
            uf = min(uf, 1000)
        a = (volts, uf, SUPPLIES[draw.choice(list(SUPPLIES))], volts / draw.uniform(0.02, 1.5), f"{draw.uniform(0.5, 20):.2f}u", draw.choice((10, 27, 40)), n % 2, 1e9, n)
        rows.append(Row(f"closing-draw-{n}", "closing, 200 draws", "domain and parts drawn", lambda a=a: closing(*a), n < 4))
    return rows


# -- shorts --------------------------------------------------------------------------------------------------------------------

def short(volts, ohm, lead, after_ms, chassis=0, celsius=27, bounce=0, seed=None):
    """A short some milliseconds after closing; RUN goes low when the program's time rule is over."""
    at = 3e-3 + after_ms * 1e-3
    waits = TRIP_S if after_ms > 20 else 3.3e-3  # soon after a clear look the five-sixths rule decides, from 3 ms on
    values = dict(volts=volts, cset="1u", rset=f"{volts:.4g}", lead=lead, shortohm=ohm, shortat=f"{at:.6g}", tcut=f"{at + waits:.6g}", tend=f"{at + waits + 1.5e-3:.6g}",
                  chassis=chassis, bounce=bounce, csup="470u")
    got = run("closing", values, [parts(seed)] if seed is not None else [], options=f".options temp={celsius}")
    share = shares(got)
    off_us = (got.get("tgone", 0) - at - waits) * 1e6
    # L I / U: the supply's two leads empty into the clamp (80 V at a few ampere) against the supply; the set's go on through D2 across the set.
    leads_us = 2 * float(lead.replace("u", "")) * got["icut"] / (80 - volts)
    return told(got, {"off in 5 us, and what the leads hold": off_us < 5 + leads_us, "nothing left": abs(got["iend"]) < 5e-3, **{k: v < SHARE for k, v in share.items()}},
                amperes=got["ipk"], cutAmperes=got["icut"], offUs=max(off_us, 0), leadsUs=leads_us, joule=got["ej"], kelvin=got["tjm"], volts=got["vdspk"], **{f"share {k}": v for k, v in share.items()})


def shorts():
    rows = []
    for volts in (3, 12, 24, 40, 60):
        for ohm in (0.02, 0.1, 0.5, 2.5):
            for lead in ("0.5u", "20u"):
                for after in (0.02, 0.1, 1, 10, 30):
                    rows.append(Row(f"short-{volts}V-{ohm}ohm-{lead}-{after}ms", "shorts", f"{volts} V, {after} ms after closing",
                                    lambda a=(volts, ohm, lead, after, int(after > 1)): short(*a), ohm == 0.02 and lead == "0.5u" and after in (0.1, 30) and volts in (12, 60)))
    for volts in (12, 24, 30, 60):
        for lead in ("0.7u", "1.5u", "10u"):
            rows.append(Row(f"short-{volts}V-0.05ohm-{lead}", "shorts", f"{volts} V, 50 mohm, leads of {lead}H", lambda a=(volts, 0.05, lead, 30): short(*a)))
    for volts in (12, 24, 60):
        for ohm in (0.02, 0.1, 0.5, 2.5):
            rows.append(Row(f"short-{volts}V-{ohm}ohm-5u", "shorts", f"{volts} V, leads of 5 uH", lambda a=(volts, ohm, "5u", 30): short(*a)))
    for volts in (24, 60):
        for celsius in (0, 60):
            rows.append(Row(f"short-{volts}V-{celsius}C", "shorts", f"{volts} V, {celsius} C", lambda a=(volts, 0.02, "0.5u", 30, 0, celsius): short(*a)))
            rows.append(Row(f"short-early-{volts}V-{celsius}C", "shorts", f"{volts} V, {celsius} C, at closing", lambda a=(volts, 0.02, "0.5u", 0.1, 0, celsius): short(*a)))
        rows.append(Row(f"short-bouncing-{volts}V", "shorts", f"{volts} V, a wire that bounces every 0.2 ms", lambda a=(volts, 0.02, "1u", 30, 0, 27, "0.2m"): short(*a)))
    for n in range(20):
        draw = random.Random(2000 + n)
        a = (round(draw.uniform(6, 60), 1), round(0.02 * 50 ** draw.random(), 3), f"{draw.uniform(0.5, 20):.2f}u", draw.choice((0.1, 1, 10, 30)), n % 2, draw.choice((10, 27, 40)), 0, n)
        rows.append(Row(f"short-draw-{n}", "shorts", "drawn, parts drawn", lambda a=a: short(*a)))
    return rows


# -- drive ---------------------------------------------------------------------------------------------------------------------

def drive(limit_ms, volts, **values):
    """Something ends the drive at 6 ms; current has to be gone in time."""
    base = dict(volts=volts, cset="1u", rset=f"{volts}", lead="2u", tend="12m")
    got = run("closing", {**base, **values, "tcut": values.get("tcut", "6m")} if "pins" not in values and "v5fall" not in values else {**base, **values})
    at = 6e-3
    gone = got.get("tgone")
    if gone is None:
        got2 = run("closing", {**base, **values}, [lambda n, line: line.replace("td={tcut}", "td=6m")])
        gone, got = got2.get("tgone", 99), got2
    share = shares(got)
    return told(got, {"in time": gone - at < limit_ms * 1e-3, "nothing left": abs(got["iend"]) < 5e-3, **{k: v < SHARE for k, v in share.items()}},
                offMs=(gone - at) * 1e3, amperes=got["ipk"], joule=got["ej"], **{f"share {k}": v for k, v in share.items()})


def drives():
    rows = []
    for volts in (12, 60):
        for name, limit, values in (("run-low", 0.005, {}), ("pulses-stop", 2, dict(tstop="6m", pins=3)), ("pulses-stop-A-high", 2, dict(tstop="6.0625m", pins=0)), ("pins-float", 2, dict(tstop="6m", pins=1)),
                                    ("pulses-stop-low", 2, dict(tstop="6m", pins=2)), ("5V-falls", 2.5, dict(v5fall="6m")),
                                    ("hang-with-short", 2, dict(tstop="6m", pins=3, shortat="6m", shortohm=0.02))):
            rows.append(Row(f"drive-{name}-{volts}V", "drive", name.replace("-", " "), lambda a=(limit, volts), v=values: drive(*a, **v), True))
        rows.append(Row(f"drive-60C-hang-{volts}V", "drive", "hang at 60 C", lambda v=volts: drive(2, v, tstop="6m", pins=3)))
    return rows


def plugged(volts, chassis, v5, lead):
    """A supply is plugged in within 50 ns while the box has no 5 V or holds its switch off."""
    got = run("closing", dict(volts=volts, plug=1, v5=v5, chassis=chassis, lead=lead, csup="1n", cset="470u", rset=20, trun="90", tpump="90", tend="3m"),
              [lambda n, line: line.replace("from={trun}", "from=0.1u").replace("to={trun}", "to=3m").replace("at={trun-10u}", "at=1u").replace("at={trun+2.9m}", "at=2.9m").replace("from=50u", "from=0")])
    return told(got, {"gate": got["gdark"] < 2.2, "set": got["vsetpk"] < 0.5, "volts": got["vdspk"] < SHARE * SWITCH_V},
                gateV=got["gdark"], amperes=got["ipk"], setV=got["vsetpk"], volts=got["vdspk"])


def plugs():
    return [Row(f"plug-{volts}V-{'dead' if v5 == 0 else 'off'}-{lead}-{chassis}", "a supply plugged in", f"{volts} V, box {'without 5 V' if v5 == 0 else 'off'}",
                lambda a=(volts, chassis, v5, lead): plugged(*a), volts == 60 and lead == "0.5u")
            for volts in (24, 60) for v5 in (0, 5) for lead in ("0.5u", "5u") for chassis in (0, 1)]


def rows():
    return closings() + ordinary() + shorts() + drives() + plugs()
