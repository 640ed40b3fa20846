#!/usr/bin/env python3
"""Reads a Firstamp bench log with nothing but Python's own library; shows that log-schema.md is enough.

usage: read_log.py FILE [POWER_UP]
Prints each power-up's stream in its order, shortened to one line per run of conversions with a CRC-32 of their
counts (16-bit, little-endian), and one line per event.
"""
import json
import sqlite3
import struct
import sys
import zlib

PLAN = "I H M V I H M R1 I H M R2 I H M R3 I H M J I H M R1 I H M R2 I H M R3".split()
CHANNELS = "I J V R1 R2 R3 H M".split()
SLOT = [CHANNELS.index(name) for name in PLAN]
LONGEST = 1 << 20
CRC_TABLE = []
for n in range(256):
    for _ in range(8):
        n = n >> 1 ^ 0x82F63B78 if n & 1 else n >> 1
    CRC_TABLE.append(n)


def crc32c(data):
    crc = 0xFFFFFFFF
    for byte in data:
        crc = CRC_TABLE[(crc ^ byte) & 255] ^ crc >> 8
    return crc ^ 0xFFFFFFFF


def check(condition, what):
    if not condition:
        raise ValueError(what)


def int32(value):
    return (value + 2**31) % 2**32 - 2**31


def unpack(data, count, width, base):
    """Numbers of a fixed width, lowest bit first."""
    check(len(data) == (count * width + 7) // 8, "packed length")
    mask = (1 << width) - 1
    values = []
    for start in range(0, count, 256):  # 256 numbers fill whole bytes; one long number would be slow to shift
        piece = int.from_bytes(data[start * width // 8:(start + 256) * width // 8], "little")
        for k in range(min(256, count - start)):
            values.append((piece >> k * width & mask) + base)
    return values


def plain(data, count):
    base, width = struct.unpack_from("<iB", data)
    check(width <= 32, "width")
    return unpack(data[5:], count, width, base)


def tables(data, at):
    first, contexts, number = data[at:at + 3]
    at += 3
    check(first + contexts <= 56 and number <= contexts, "tables")
    table_of = dict(zip(range(first, first + contexts), data[at:at + contexts]))
    at += contexts
    lookup = []
    for _ in range(number):
        low, width = data[at:at + 2]
        at += 2
        check(low + width <= 86, "tokens")
        table = []
        for token in range(low, low + width):
            frequency = data[at]
            at += 1
            if frequency > 127:
                frequency = (frequency & 127) << 7 | data[at] & 127
                at += 1
            table += [(token, frequency, k) for k in range(frequency)]
        check(len(table) == 4096, "table sum")
        lookup.append(table)
    return table_of, lookup, at


def linear(data, count, companion):
    base, companion_base, block = struct.unpack_from("<iii", data)
    check(block >= 1, "block")
    h = [v - companion_base for v in companion] if companion else []
    at = 12
    predictors = []
    for _ in range((count + block - 1) // block):
        intercept, own, joint = struct.unpack_from("<iBB", data, at)
        check(own <= 32 and joint in (0, 16) and (joint == 0 or len(h) == count), "predictor")
        coefficients = struct.unpack_from("<%dh" % (own + joint), data, at + 6)
        predictors.append((intercept, coefficients[:own], coefficients[own:]))
        at += 6 + 2 * (own + joint)
    table_of, lookup, at = tables(data, at)
    words, even, odd = struct.unpack_from("<iII", data, at)
    check(0 <= words <= count + 4, "words")
    word = at + 12
    end = word + 2 * words
    check(end <= len(data), "words")
    extra_at, held, bits = end, 0, 0
    x = []
    mean = 48
    for k in range(count):
        intercept, own, joint = predictors[k // block]
        prediction = intercept
        for i in range(min(len(own), k)):
            prediction += own[i] * x[k - 1 - i]
        for j in range(len(joint)):
            if 0 <= k - 8 + j < count:
                prediction += joint[j] * h[k - 8 + j]
        near = int32(prediction + 2048 >> 12)
        rest = prediction - (near << 12)
        size = 0
        if mean >= 16:
            octave = mean.bit_length() - 1
            size = min(13, 2 * (octave - 4) + (mean >> octave - 1 & 1) + 1)
        context = size * 4 + (0 if size > 6 else min(3, abs(rest) >> 9))
        token, frequency, place = lookup[table_of[context]][even & 4095]
        even = frequency * (even >> 12) + place
        if even < 1 << 16:
            check(word < end, "words end")
            even = even << 16 | data[word] | data[word + 1] << 8
            word += 2
        even, odd = odd, even
        folded = token
        if token >= 32:
            width = (token - 32 >> 1) + 4
            while bits < width:
                held |= data[extra_at] << bits
                extra_at += 1
                bits += 8
            folded = (2 | token & 1) << width | held & (1 << width) - 1
            held >>= width
            bits -= width
        error = int32(folded >> 1 ^ -(folded & 1))
        x.append(int32(near - error if rest < 0 else near + error))
        mean += (min(abs(error), 1 << 20) << 6) - mean >> 4
    check(word == end and even == odd == 1 << 16 and extra_at == len(data), "end of code")
    return [int32(v + base) for v in x]


def bank(data, count, companion):
    base, segment, predictors, taps = struct.unpack_from("<iiBB", data)
    check(segment >= 256 and segment % 256 == 0 and 1 <= predictors <= 16 and taps <= 16, "segment or predictors")
    at, companion_base, stride, offset, h = 10, 0, 1, 0, companion or []
    if taps:
        companion_base, stride, offset = struct.unpack_from("<iBh", data, at)
        at += 7
    bank = []
    for _ in range(predictors):
        intercept, own = struct.unpack_from("<iB", data, at)
        check(own <= 32, "order")
        numbers = struct.unpack_from("<%dh" % (own + taps), data, at + 5)
        bank.append((intercept, numbers[:own], numbers[own:]))
        at += 5 + 2 * (own + taps)
    blocks, width = (count + 255) // 256, (predictors - 1).bit_length()
    end = at + (blocks * width + 7) // 8
    choice = unpack(data[at:end], blocks, width, 0)
    table_of, lookup, at = tables(data, end)
    starts = range(0, count, segment)
    place = at + 7 * len(starts)
    values = []
    for n, begin in enumerate(starts):
        words, plain_bytes, context, start = struct.unpack_from("<HHBh", data, at + 7 * n)
        states = list(struct.unpack_from("<4I", data, place))
        word, size = place + 16, 0
        extra_at = word_end = word + 2 * words
        place = word_end + plain_bytes
        check(place <= len(data), "segment")
        held, bits = 0, 0
        length = min(segment, count - begin)
        low, high = (max(0, min(len(h), offset + taps // 2 + stride * k)) for k in (begin, begin + length))
        x = [start] * 32
        for k in range(length):
            if k % 16 == 0 and k:
                octave = size.bit_length() - 1
                context = 0 if size < 4 else min(15, 2 * (octave - 2) + (size >> octave - 1 & 1) + 1)
                size = 0
            s = states[k & 3]
            token, frequency, run = lookup[table_of[context]][s & 4095]
            s = frequency * (s >> 12) + run
            if s < 1 << 15:
                check(word < word_end, "words end")
                s = s << 16 | data[word] | data[word + 1] << 8
                word += 2
            states[k & 3] = s
            folded = token
            if token >= 32:
                width = (token - 32 >> 1) + 4
                while bits < width:
                    held |= data[extra_at] << bits
                    extra_at += 1
                    bits += 8
                folded = (2 | token & 1) << width | held & (1 << width) - 1
                held >>= width
                bits -= width
            error = folded >> 1 ^ -(folded & 1)
            size += min(abs(error), 1 << 20)
            sum, own, joint = bank[choice[(begin + k) // 256]]
            for i, coefficient in enumerate(own):
                sum += coefficient * x[31 + k - i]
            for j, coefficient in enumerate(joint):
                if low <= offset + stride * (begin + k) + j < high:
                    sum += coefficient * (h[offset + stride * (begin + k) + j] - companion_base)
            x.append(error + (sum + 2048 >> 12))
        check(word == word_end and states == [1 << 15] * 4 and extra_at == place, "end of segment")
        values += [v + base for v in x[32:]]
    check(place == len(data), "end of code")
    return values


def series(version, data, count, companion=None):
    check(0 <= count <= LONGEST and version in (0, 1, 2, 3), "series version or count")
    if version == 0:
        return plain(data, count)
    return bank(data, count, companion) if version == 3 else linear(data, count, companion if version == 2 else None)


def intact(data, crc):
    check(crc32c(data) == crc, "CRC-32C")
    return data


def groups(db, power_up, raw):
    """(position, values per channel, or of a tail row in stream order) in the order of the stream."""
    for (position,) in db.execute(
            "SELECT DISTINCT position FROM chunk WHERE power_up = ? ORDER BY position", (power_up,)).fetchall():
        channels = [[] for _ in CHANNELS]
        for channel, version, count, crc, data in db.execute(
                "SELECT channel, version, count, crc32c, data FROM chunk WHERE power_up = ? AND position = ?"
                " ORDER BY channel", (power_up, position)):
            intact(data, crc)
            if raw:
                channels[channel] = series(version, data, count, {1: channels[0], 7: channels[6]}.get(channel))
                continue
            check(version == 16, "chunk version")
            at, parts = 0, []
            for _ in range(4):
                part, length = struct.unpack_from("<Bi", data, at)
                parts.append(series(part, data[at + 5:at + 5 + length], count))
                at += 5 + length
            per = 5 * [8, 1, 1, 2, 2, 2, 8, 8][channel]
            channels[channel] = [(s, lo, lo + up, s * s // per + q) for s, lo, up, q in zip(*parts)]
        yield position, channels, None
    for position, count, crc, data in db.execute(
            "SELECT position, count, crc32c, data FROM tail WHERE power_up = ? ORDER BY position", (power_up,)):
        intact(data, crc)
        check(0 <= count <= LONGEST, "count")
        yield position, None, unpack(data, count, 10, 0) if raw else [
            [struct.unpack_from("<HHHI", data, 80 * k + 10 * c) for c in range(8)] for k in range(count)]


def stream(db, power_up, raw):
    """(position, conversion index, value): a count, or eight (sum, lowest, highest, squares)."""
    stretches = db.execute(
        "SELECT position, first_index FROM stretch WHERE power_up = ? ORDER BY position", (power_up,)).fetchall()
    step, s = 1 if raw else 160, 0
    for position, channels, tail in groups(db, power_up, raw):
        length = len(tail) if channels is None else sum(map(len, channels)) if raw else len(channels[0])
        taken = [0] * 8
        for k in range(length):
            while s + 1 < len(stretches) and stretches[s + 1][0] <= position + k:
                s += 1
            index = stretches[s][1] + (position + k - stretches[s][0]) * step
            if channels is None:
                value = tail[k]
            elif raw:
                channel = SLOT[index & 31]
                value = channels[channel][taken[channel]]
                taken[channel] += 1
            else:
                value = [channels[c][k] for c in range(8)]
            yield position + k, index, value


def show(db, power_up, raw):
    events = db.execute("SELECT place, kind, micros, fields FROM event WHERE power_up = ? ORDER BY number",
                        (power_up,)).fetchall()
    run, first, following, e = bytearray(), None, None, 0

    def end_run():
        if run:
            print("run", first, len(run) // (2 if raw else 80), "%08x" % zlib.crc32(bytes(run)))
            run.clear()

    for position, index, value in stream(db, power_up, raw):
        while e < len(events) and events[e][0] <= position:
            end_run()
            print("event", events[e][1], events[e][2], json.dumps(json.loads(events[e][3]), sort_keys=True))
            e += 1
        if not run or index != following:
            end_run()
            first = index
        run += struct.pack("<H", value) if raw else b"".join(struct.pack("<HHHI", *v) for v in value)
        following = index + (1 if raw else 160)
    end_run()
    for _, kind, micros, fields in events[e:]:
        print("event", kind, micros, json.dumps(json.loads(fields), sort_keys=True))


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    db = sqlite3.connect("file:%s?mode=ro" % sys.argv[1], uri=True)
    check(db.execute("PRAGMA application_id").fetchone()[0] == 0x46535431, "not a bench log")
    check(db.execute("PRAGMA user_version").fetchone()[0] in (1, 2, 3), "schema number")
    for number, uuid, kind in db.execute("SELECT id, uuid, stream FROM power_up ORDER BY id").fetchall():
        if len(sys.argv) < 3 or int(sys.argv[2]) == number:
            print("power-up", number, uuid, kind)
            show(db, number, kind == "raw")


if __name__ == "__main__":
    main()
