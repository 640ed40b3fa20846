/* Counts the conversions which the firmware put on its line since the stream was accepted; sees the host switch on. */
#ifndef SIM_STREAM_H
#define SIM_STREAM_H

#include "wire.h"

struct stream {
    struct wire_receiver from_host;
    uint16_t asked_sequence;
    uint8_t asked_kind;
    bool asked;
    bool switch_on_sent; /* the host has sent its first "switch on" */
    uint64_t conversions_sent;
};

enum stream_change { STREAM_SAME, STREAM_STARTED, STREAM_STOPPED };

/* Bytes of the host, to know which kind of stream an "accepted" answers and when the switch is asked to close. */
void stream_host_byte(struct stream *stream, uint8_t byte);

/* A frame of the probe: counted; says whether it starts or stops the stream. */
enum stream_change stream_probe_frame(struct stream *stream, const struct wire_frame *frame);

#endif
