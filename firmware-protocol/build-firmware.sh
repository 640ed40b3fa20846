#!/bin/sh
# Builds or tests the firmware with the tools that are there; Maven calls it.
#   build-firmware.sh build|test [true]
# build: firmware/build/probe.elf and, with simavr, firmware/build/probe-sim
# test:  the portable C core, on this computer
# Without a tool it says so loudly and passes, so that the host can be built anywhere; with "true" that is a failure.
set -u

task=${1:?usage: build-firmware.sh build|test [true]}
required=${2:-false}
here=$(cd "$(dirname "$0")" && pwd)
firmware=$here/firmware

skip() {
  if [ "$required" = true ]; then
    echo "FAILED: firmware $task: $1. -Dfirstamp.requireTools=true forbids to skip it. $2" >&2
    exit 1
  fi
  echo "SKIPPED: firmware $task: $1. The host is built all the same. $2" >&2
  exit 0
}

has() { command -v "$1" >/dev/null 2>&1; }

compiles() { printf '#include <%s>\n' "$1" | cc -fsyntax-only -x c - >/dev/null 2>&1; }

debian="On Debian 12: apt-get install make gcc gcc-avr avr-libc simavr libsimavr-dev libngspice0-dev"

[ -f "$firmware/Makefile" ] || skip "no $firmware/Makefile" "The checkout is not whole."
has make || skip "no make" "$debian"

case $task in
  build)
    has avr-gcc || skip "no avr-gcc, so no probe.elf" "$debian"
    # In the simulator's own headers "avr" is a folder beside sim_avr.h.
    if has cc && compiles simavr/sim_avr.h; then
      exec make -C "$firmware" all probe-sim
    fi
    make -C "$firmware" all || exit 1
    skip "no C compiler with simavr headers, so no probe-sim and no tests on the simulated chip" "$debian"
    ;;
  test)
    has cc || skip "no C compiler, so no tests of the C core" "$debian"
    exec make -C "$firmware" test
    ;;
  *)
    echo "unknown task '$task'; expected build or test" >&2
    exit 64
    ;;
esac
