#include "stream.h"

enum { CONVERSIONS_PER_READING = 160 };

void stream_host_byte(struct stream *stream, uint8_t byte)
{
    struct wire_frame frame;
    if (!wire_receive(&stream->from_host, byte, &frame))
        return;
    if (wire_type(&frame) == WIRE_SWITCH_ON)
        stream->switch_on_sent = true;
    if (wire_type(&frame) != WIRE_STREAM || wire_payload_length(&frame) != 1)
        return;
    stream->asked = true;
    stream->asked_sequence = wire_u16(frame.bytes + 2);
    stream->asked_kind = wire_payload(&frame)[0];
}

enum stream_change stream_probe_frame(struct stream *stream, const struct wire_frame *frame)
{
    const uint8_t *payload = wire_payload(frame);
    size_t length = wire_payload_length(frame);
    if (wire_type(frame) == WIRE_RAW && length >= 4)
        stream->conversions_sent += payload[1];
    else if (wire_type(frame) == WIRE_READING)
        stream->conversions_sent += CONVERSIONS_PER_READING;
    else if (wire_type(frame) == WIRE_ACCEPTED && length == 3 && payload[0] == WIRE_STREAM && stream->asked
             && wire_u16(payload + 1) == stream->asked_sequence) {
        stream->asked = false;
        if (stream->asked_kind == 0)
            return STREAM_STOPPED;
        stream->conversions_sent = 0;
        return STREAM_STARTED;
    }
    return STREAM_SAME;
}
