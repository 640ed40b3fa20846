#include "beeper.h"

#include "hal.h"

/* Period is a power of two: on in the first half. A pattern ends by itself, so a lost host leaves no noise. */
enum { BEEP_MS = 128, ALARM_PERIOD_MS = 512, TRIP_PERIOD_MS = 128, LONGEST_MS = 4096 };

void beeper_sound(struct beeper *beeper, enum sound_pattern pattern, uint32_t now_ms)
{
    beeper->pattern = (uint8_t)pattern;
    beeper->since_ms = now_ms;
    beeper_run(beeper, now_ms);
}

void beeper_run(struct beeper *beeper, uint32_t now_ms)
{
    uint32_t elapsed_ms = now_ms - beeper->since_ms;
    uint32_t longest_ms = beeper->pattern == SOUND_BEEP ? BEEP_MS : LONGEST_MS;
    if (beeper->pattern != SOUND_QUIET && elapsed_ms >= longest_ms)
        beeper->pattern = SOUND_QUIET;
    uint16_t half_ms = beeper->pattern == SOUND_TRIP ? TRIP_PERIOD_MS / 2 : ALARM_PERIOD_MS / 2;
    bool on = beeper->pattern == SOUND_BEEP || (beeper->pattern != SOUND_QUIET && (elapsed_ms & half_ms) == 0);
    hal_beeper(on);
}
