#include "notices.h"

#include "compiler.h"

static CORE_RARE void drop_first(struct notices *notices)
{
    notices->count--;
    for (uint8_t at = 0; at < notices->count; at++)
        notices->waiting[at] = notices->waiting[at + 1];
}

void notices_put(struct notices *notices, enum probe_message type, uint8_t first, uint8_t second, uint32_t tick_us)
{
    CORE_NEAR(notices);
    if (notices->count == NOTICES) /* the line does not move: the newest state is what counts */
        drop_first(notices);
    struct notice notice = {(uint8_t)type, first, second, tick_us};
    notices->waiting[notices->count++] = notice;
}

static bool send_first(struct notices *notices, struct wire_out *out)
{
    const struct notice *notice = &notices->waiting[0];
    if (!wire_out_begin(out, notice->type, notice->tick_us, SWITCH_BYTES))
        return false;
    wire_out_u8(out, notice->first);
    wire_out_u8(out, notice->second);
    wire_out_end(out);
    drop_first(notices);
    return true;
}

void notices_send(struct notices *notices, struct wire_out *out)
{
    CORE_NEAR(notices);
    while (notices->count > 0 && send_first(notices, out))
        continue;
}
