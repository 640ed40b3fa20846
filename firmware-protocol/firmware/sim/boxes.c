#include "boxes.h"

static const char *const BOXES[] = {
#include "boxes.inc"
};

enum { BOX_COUNT = sizeof BOXES / sizeof BOXES[0] };

unsigned boxes_of_seed(uint64_t seed)
{
    return (unsigned)((seed + BOX_COUNT - 1) % BOX_COUNT) + 1;
}

bool boxes_take(struct frontend *frontend, uint64_t seed, struct failure *failure)
{
    return frontend_read_text(frontend, "drawn box", BOXES[boxes_of_seed(seed) - 1], failure);
}
