#include "capture.h"

void capture_start(struct capture *capture)
{
    capture->resting = true;
    capture->next = 0;
    capture->before = 0;
    capture->after = CAPTURE_AFTER;
    capture->tripped = false;
    capture->number = 0;
    capture->resting = false;
}

uint16_t *capture_lend(struct capture *capture)
{
    capture->resting = true;
    capture->tripped = false;
    capture->number = 0;
    return capture->kept.lent_words;
}

void capture_put(struct capture *capture, uint8_t slot, uint16_t counts)
{
    if (capture->resting)
        return;
    uint8_t at = capture->next;
    uint8_t bits = (uint8_t)(counts >> 8);
    uint8_t mask = 3;
    if (at & 64) {
        bits = (uint8_t)(bits << 2);
        mask = 3 << 2;
    }
    if (at & 128) {
        bits = (uint8_t)(bits << 4);
        mask = (uint8_t)(mask << 4);
    }
    capture->kept.low[at] = (uint8_t)counts;
    uint8_t *high = &capture->high[at & 63];
    *high = (uint8_t)((*high & (uint8_t)~mask) | bits);
    capture->next = (uint8_t)(at + 1);
    if (!capture->tripped)
        capture->last_slot = slot;
    if (!capture->tripped) {
        if (capture->before < CAPTURE_BEFORE)
            capture->before++;
    } else if (--capture->after == 0) {
        capture->resting = true;
    }
}

void capture_trip(struct capture *capture)
{
    capture->decided = (uint8_t)(capture->next - 1);
    capture->tripped = true;
}

bool capture_whole(const struct capture *capture, uint16_t number)
{
    return number != 0 && capture->number == number && capture->tripped && capture->resting;
}

uint16_t capture_at(const struct capture *capture, int16_t place)
{
    uint8_t at = (uint8_t)(capture->decided + place);
    uint8_t pair = (uint8_t)(capture->high[at & 63] >> (2 * (at >> 6)));
    return (uint16_t)(capture->kept.low[at] | (uint16_t)(pair & 3) << 8);
}

uint8_t capture_missing(const struct capture *capture, uint8_t block)
{
    uint8_t missing = (uint8_t)(CAPTURE_BEFORE - capture->before);
    uint8_t from = (uint8_t)(block * CAPTURE_BLOCK);
    if (missing <= from)
        return 0;
    missing = (uint8_t)(missing - from);
    return missing > CAPTURE_BLOCK ? CAPTURE_BLOCK : missing;
}
