#include "beeper.h"

#include "compiler.h"

#include "hal.h"

/* In plans of 2 ms. On in the first half of a period; a pattern ends by itself, so a lost host leaves no noise. */
enum { BEEP_PLANS = 64, ALARM_HALF_PLANS = 128, TRIP_HALF_PLANS = 32, LONGEST_PLANS = 2048 };

void beeper_sound(struct beeper *beeper, enum sound_pattern pattern, uint16_t now_plans)
{
    beeper->pattern = (uint8_t)pattern;
    beeper->since_plans = now_plans;
    beeper_run(beeper, now_plans);
}

void beeper_run(struct beeper *beeper, uint16_t now_plans)
{
    CORE_NEAR(beeper);
    uint16_t elapsed = (uint16_t)(now_plans - beeper->since_plans);
    uint8_t half = 0; /* no pause */
    if (beeper->pattern == SOUND_ALARM)
        half = ALARM_HALF_PLANS;
    else if (beeper->pattern == SOUND_TRIP)
        half = TRIP_HALF_PLANS;
    if (elapsed >= (half == 0 ? BEEP_PLANS : LONGEST_PLANS))
        beeper->pattern = SOUND_QUIET;
    hal_beeper(beeper->pattern != SOUND_QUIET && (elapsed & half) == 0);
}
