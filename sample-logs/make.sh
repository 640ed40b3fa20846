#!/bin/sh
# Makes the sample logs again: each power-up runs on the emulated probe with the sheet beside it and is exported to a
# file of its own. The stored summary keeps the path of its log as it was given: it is given without a folder, from
# within the work folder, so that no path of the computer gets into a sample.
set -eu
here=$(cd "$(dirname "$0")" && pwd)
firstamp=${FIRSTAMP:-$here/../host/firstamp}
work=$(mktemp -d)
cd "$work"
trap 'rm -rf "$work"' EXIT

# NAME SCENARIO TIME SEED LABEL: the power-up on the sheet NAME.json, into NAME.firstamp.
sample() {
  status=0
  "$firstamp" demo --headless --json --speed max --scenario "$2" --sheet "$here/$1.json" --for "$3" --seed "$4" --label "$5" \
    --log "$1.db" >"$1.lines" 2>"$1.messages" || status=$?
  # 3 is a finding, and most of these sets have a fault to be found.
  case $status in
    0 | 3) ;;
    *) cat "$1.messages" >&2; exit "$status" ;;
  esac
  "$firstamp" export last --force --log "$1.db" --to "$here/$1.firstamp"
}

sample healthy healthy 3s 1 "all wires back, first try"
sample wire-short wire-short 3s 2 "screened lead on P7"
sample look-short look-short 3s 3 "after the capacitors"
sample lost-head lost-head 5s 4 "recording, tone at the input"
sample tired-filter tired-filter 5s 5 "on its own transformer"
sample hum hum 5s 6 "screen of the head lead open"
sample motor-stall motor-stall 5s 7 "belt off, flywheel stiff"
sample creep creep 4min 8 "left on the bench"
