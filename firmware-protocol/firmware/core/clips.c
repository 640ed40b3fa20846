#include "clips.h"

#include <string.h>

#include "compiler.h"
#include "hal.h"

enum {
    NORMAL_PLANS = 2, /* what the inputs are before */
    MOVED_PLANS = 2,  /* until the clips' filters have settled */
    TEST_PLANS = 1,
    BACK_PLANS = 2,
    TEST_FROM = NORMAL_PLANS + MOVED_PLANS,
    BACK_FROM = TEST_FROM + TEST_PLANS,
    OVER = BACK_FROM + BACK_PLANS,
    AT_END = 1018,     /* counts: an open rail is moved to the converter's end */
    OPEN_NARROW = 573, /* what an open rail reads otherwise */
    OPEN_WIDE = 531,
    OPEN_NEAR = 8,
    METER_MOVES = 40,
    HEAD_MOVES = 100
};

void clips_start(struct clips *clips)
{
    memset(clips, 0, sizeof *clips);
}

static uint16_t apart(uint16_t one, uint16_t other)
{
    return one > other ? (uint16_t)(one - other) : (uint16_t)(other - one);
}

/* Mean of what was summed, at most 32 conversions of 1023. */
static CORE_RARE uint16_t mean(const struct clips *clips, uint8_t at)
{
    if (clips->count[at] == 0)
        return 0;
    return (uint16_t)(clips->sum[at] / clips->count[at]);
}

static CORE_RARE void take_normal(struct clips *clips)
{
    for (uint8_t at = 0; at < CLIP_CHANNELS; at++) {
        clips->normal[at] = mean(clips, at);
        clips->count[at] = 0;
        clips->sum[at] = 0;
    }
}

static CORE_RARE void next_plan(struct clips *clips)
{
    uint8_t plan = ++clips->plan;
    if (plan == NORMAL_PLANS) {
        take_normal(clips);
        hal_read_back(true);
    } else if (plan == BACK_FROM) {
        hal_read_back(false);
    }
}

bool clips_conversion(struct clips *clips, const struct conversion *conversion)
{
    if (conversion->slot == 0) {
        if (clips->begun)
            next_plan(clips);
        clips->begun = true;
    }
    uint8_t channel = conversion_channel(conversion);
    if (!clips->begun || channel < CHANNEL_R1)
        return false;
    uint8_t at = (uint8_t)(channel - CHANNEL_R1);
    uint8_t plan = clips->plan;
    if (plan < NORMAL_PLANS || plan == TEST_FROM) {
        clips->sum[at] = (uint16_t)(clips->sum[at] + conversion->counts);
        clips->count[at]++;
    }
    if (channel == CHANNEL_H && plan >= NORMAL_PLANS &&
        apart(conversion->counts, clips->normal[at]) > HEAD_MOVES)
        clips->head_moved = true;
    return plan >= OVER;
}

static uint16_t tested(const struct clips *clips, uint8_t channel)
{
    return mean(clips, (uint8_t)(channel - CHANNEL_R1));
}

static bool rail_open(const struct clips *clips, uint8_t channel)
{
    uint16_t normal = clips->normal[channel - CHANNEL_R1];
    bool as_open = normal >= AT_END || apart(normal, OPEN_NARROW) <= OPEN_NEAR || apart(normal, OPEN_WIDE) <= OPEN_NEAR;
    return as_open && tested(clips, channel) >= AT_END;
}

uint8_t clips_joined(const struct clips *clips)
{
    uint8_t joined = CLIPS_READ_BACK;
    for (uint8_t channel = CHANNEL_R1; channel <= CHANNEL_R3; channel++)
        if (!rail_open(clips, channel))
            joined = (uint8_t)(joined | CLIP_RAIL_1 << (channel - CHANNEL_R1));
    if (!clips->head_moved)
        joined |= CLIP_HEAD;
    if (apart(clips->normal[CHANNEL_M - CHANNEL_R1], tested(clips, CHANNEL_M)) <= METER_MOVES)
        joined |= CLIP_METER;
    return joined;
}
