#!/bin/sh
# From starting the launcher to the first live reading of the emulated probe in the window, in ms, the middle of so many
# rounds; needs a screen of 1280 x 800 with nothing on it (xvfb-run). The benchmarks are built before.
set -eu
here=$(CDPATH='' cd "$(dirname "$0")" && pwd -P)
"$here/../firstamp" --version >/dev/null # built and prepared before, so that neither is measured
exec java -cp "$here/target/classes:$here/../target/firstamp-host.jar" firstamp.window.FirstReading "$here/../firstamp" "${1:-5}"
