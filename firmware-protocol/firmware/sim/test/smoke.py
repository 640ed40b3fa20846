#!/usr/bin/env python3
"""Smoke test of probe-sim with the real firmware: hello, raw stream, limits, switch on, a trip, all in flat-out time.

usage: smoke.py PROBE_SIM PROBE_ELF
"""
import json
import os
import select
import signal
import struct
import subprocess
import sys
import tempfile
import time

STEP_S = 0.05
ACCEPTED, REFUSED, HELLO, RAW, TRIP, SWITCH = 0x08, 0x09, 0x01, 0x02, 0x05, 0x0A
HELLO_REQUEST, STREAM, LIMITS, SWITCH_ON, HEARTBEAT = 0x41, 0x42, 0x43, 0x45, 0x48


def crc16(data):
    crc = 0xFFFF
    for byte in data:
        crc ^= byte << 8
        for _ in range(8):
            crc = (crc << 1 ^ 0x1021 if crc & 0x8000 else crc << 1) & 0xFFFF
    return crc


def cobs(data):
    return b"".join(bytes([len(run) + 1]) + run for run in data.split(b"\0"))  # frames here are under 254 bytes


def uncobs(data):
    out, at = bytearray(), 0
    while at < len(data):
        code = data[at]
        out += data[at + 1:at + code]
        at += code
        if code < 255 and at < len(data):
            out.append(0)
    return bytes(out)


class Host:
    def __init__(self, path):
        self.line = os.open(path, os.O_RDWR | os.O_NOCTTY)
        self.sequence, self.held, self.seen = 0, b"", []

    def send(self, kind, payload=b""):
        plain = struct.pack("<BBHI", 1, kind, self.sequence, 0) + payload
        os.write(self.line, cobs(plain + struct.pack("<H", crc16(plain))) + b"\0")
        self.sequence += 1
        return self.sequence - 1

    def frames(self):
        if select.select([self.line], [], [], 0.01)[0]:
            *whole, self.held = (self.held + os.read(self.line, 65536)).split(b"\0")
            for coded in whole:
                plain = uncobs(coded)
                if len(plain) >= 10 and crc16(plain[:-2]) == struct.unpack("<H", plain[-2:])[0]:
                    yield plain[1], struct.unpack("<I", plain[4:8])[0], plain[8:-2]

    def until(self, wanted, seconds=20):
        end = time.monotonic() + seconds
        beat = 0
        while time.monotonic() < end:
            if time.monotonic() > beat:
                self.send(HEARTBEAT)
                beat = time.monotonic() + 0.02
            for kind, tick, payload in self.frames():
                self.seen.append((kind, payload))
                if wanted(kind, payload):
                    return tick, payload
        raise SystemExit(f"FAILED: nothing came within {seconds} s; last {[hex(k) for k, _ in self.seen[-20:]]}")

    def command(self, kind, payload):
        mine = self.send(kind, payload)
        tick, answer = self.until(
            lambda k, p: k in (ACCEPTED, REFUSED) and struct.unpack("<H", p[1:3])[0] == mine)
        if len(answer) == 6:
            raise SystemExit(f"FAILED: {kind:#x} refused, reason {answer[3]}, detail {answer[4:].hex()}")


def main(probe_sim, elf):
    folder = tempfile.mkdtemp(prefix="probe-sim-smoke-")
    wave, events, front = (os.path.join(folder, n) for n in ("wave.csv", "events", "front.json"))
    with open(wave, "w") as out:
        out.write("t_s,supply_V,supply_A,rail1_V,head_V,meter_V\n0,12,0.1,8,0,0\n"
                  f"{STEP_S},12,0.1,8,0,0\n{STEP_S + 1e-6},12,3,8,0,0\n")
    with open(front, "w") as out:
        json.dump({"channels": {"I": {"unit": "A", "atZero": 0, "atFull": 12.5}}, "decayMs": 20}, out)
    probe = subprocess.Popen([probe_sim, "--elf", elf, "--waveform", wave, "--front-end", front, "--events", events,
                              "--cross", "supply_A=1.0", "--flat-out"], stdout=subprocess.PIPE, text=True)
    try:
        host = Host(probe.stdout.readline().split()[1])
        host.send(HELLO_REQUEST, b"\0")
        _, hello = host.until(lambda k, p: k == HELLO)
        print("hello: self-test", hello[10:12].hex(), "calibration", hello[15])
        if hello[15] != 1 or hello[10:12] != b"\0\0":
            raise SystemExit("FAILED: expected a passed self-test and a valid calibration")
        limits = struct.pack("<7H4BIH3H3H3H6x", 0, 0, 82, 0, 0, 0, 0, 3, 2, 3, 3, 0, 0, 0, 0, 0, 1023, 1023, 1023,
                             0, 10000, 0)
        host.command(LIMITS, limits)
        host.command(STREAM, b"\1")
        host.command(SWITCH_ON, struct.pack("<BBHHHHHH", 0, 0, 1000, 563, 5, 51, 61, 236))
        _, look = host.until(lambda k, p: k == 0x04)
        print("look: result", look[0], "closes", look[1], "ms", struct.unpack("<H", look[2:4])[0])
        _, trip = host.until(lambda k, p: k == TRIP)
        print("trip: cause", trip[2], "value", struct.unpack("<H", trip[14:16])[0])
        if trip[2] != 2:
            raise SystemExit("FAILED: expected a trip of the running limit (cause 2)")
        host.command(STREAM, b"\0")
        received = sum(p[1] for k, p in host.seen if k == RAW)
    finally:
        probe.send_signal(signal.SIGTERM)
        code = probe.wait(10)
    lines = [json.loads(line) for line in open(events)]
    crossed = [e["cycle"] for e in lines if e.get("crossed")]
    off = [e["cycle"] for e in lines if e.get("supply") == "off"]
    reaction_us = (off[-1] - crossed[-1]) / 16
    print("exit", code, "reaction", reaction_us, "us, conversions received", received, "sent", lines[-1])
    if code != 0 or not 0 < reaction_us <= 830 or lines[-1] != {"conversionsSent": received, "bytesLost": 0}:
        raise SystemExit("FAILED: expected exit 0, at most 830 us, and as many conversions received as sent")


main(*sys.argv[1:])
