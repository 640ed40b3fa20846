#!/bin/sh
# From starting the launcher to the first live reading of the emulated probe in the window, in ms; needs DISPLAY and
# xwininfo. The window's title names the phase: "switch open" comes with the first readings.
set -u
here=$(CDPATH='' cd "$(dirname "$0")" && pwd -P)
folder=$(mktemp -d)
rounds=${1:-3}
"$here/../firstamp" --version >/dev/null 2>&1 # built before, so that no build is measured
while [ "$rounds" -gt 0 ]; do
  rounds=$((rounds - 1))
  begin=$(date +%s%N)
  "$here/../firstamp" demo --no-sound --log "$folder/demo.db" >"$folder/out" 2>&1 &
  pid=$!
  until xwininfo -root -tree 2>/dev/null | grep -Eq ': (switch open|checking|first look|ON)"'; do
    kill -0 "$pid" 2>/dev/null || { cat "$folder/out" >&2; exit 1; }
    sleep 0.02
  done
  wall=$((($(date +%s%N) - begin) / 1000000))
  ticks=$(awk '{ print $14 + $15 }' "/proc/$pid/stat") # of 10 ms
  echo "first reading after $wall ms, $((ticks * 10)) ms of the processor"
  kill -TERM "$pid"
  wait "$pid" 2>/dev/null
  while xwininfo -root -tree 2>/dev/null | grep -q 'switch open'; do sleep 0.1; done
done
rm -rf "$folder"
