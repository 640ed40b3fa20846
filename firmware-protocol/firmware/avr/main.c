#include "avr/hal_avr.h"
#include "core/probe.h"

struct probe probe;

int main(void)
{
    hal_outputs_off();
    hal_start();
    probe_start(&probe);
    hal_run();
    for (;;) {
        probe_run(&probe);
        hal_sleep_unless_busy();
    }
}
