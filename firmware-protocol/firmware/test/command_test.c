/* Every command in every wrong length and out of range: refused or dropped, and nothing changed. */
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "check.h"
#include "core/bytes.h"
#include "core/command.h"
#include "hal_fake.h"
#include "talk.h"
#include "vectors.h"

static struct probe probe;

/* All that a command may change, apart from counters and messages. */
struct kept {
    uint8_t state;
    uint8_t stream;
    uint8_t speed;
    uint8_t beeper;
    enum hal_path path;
    enum hal_path path_wanted;
    struct limits limits;
    bool limits_given;
    uint16_t latched;
    uint8_t calibration;
    bool calibration_writing;
    bool self_test_wanted;
    uint8_t eeprom[HAL_EEPROM_BYTES];
};

static struct kept keep(void)
{
    struct kept kept;
    memset(&kept, 0, sizeof kept);
    kept.state = probe.state;
    kept.stream = probe.stream.kind;
    kept.speed = probe.speed_wanted;
    kept.beeper = probe.beeper.pattern;
    kept.path = fake.path;
    kept.path_wanted = fake.path_wanted;
    memcpy(&kept.limits, &probe.limits, sizeof kept.limits);
    kept.limits_given = probe.limits_given;
    kept.latched = latch_number(&probe.latch);
    kept.calibration = probe.calibration.state;
    kept.calibration_writing = probe.calibration_writing;
    kept.self_test_wanted = probe.self_test_wanted;
    memcpy(kept.eeprom, fake.eeprom, sizeof kept.eeprom);
    return kept;
}

static void nothing_changed_since(const struct kept *before)
{
    struct kept after = keep();
    CHECK(memcmp(&after, before, sizeof after) == 0);
}

static void every_wrong_length_is_dropped(void)
{
    static const uint8_t zeros[244];
    struct heard heard;
    talk_fresh(&probe);
    fake_run_ms(5);
    for (unsigned type = HOST_HELLO; type < HOST_TYPES_END; type++) {
        for (unsigned length = 0; length <= 110; length++) {
            if (length == wire_in_payload_bytes((uint8_t)type))
                continue;
            talk_send(HOST_HEARTBEAT, NULL, 0); /* or it would search for the line's speed */
            fake_run(40);
            struct kept before = keep();
            uint16_t rejected = probe.in.rejected;
            uint32_t heard_us = probe.host_heard_us;
            talk_forget();
            talk_send((uint8_t)type, zeros, length);
            fake_run(80);
            nothing_changed_since(&before);
            CHECK_IS(probe.in.rejected, rejected + 1);
            CHECK_IS(probe.host_heard_us, heard_us);
            CHECK(!talk_hear_type(MESSAGE_ACCEPTED, &heard));
        }
    }
}

static void unknown_types_are_dropped(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    for (unsigned type = 0; type < 256; type++) {
        if (wire_in_payload_bytes((uint8_t)type) != 255)
            continue;
        struct kept before = keep();
        uint16_t rejected = probe.in.rejected;
        talk_send((uint8_t)type, NULL, 0);
        fake_run(40);
        nothing_changed_since(&before);
        CHECK_IS(probe.in.rejected, rejected + 1);
        CHECK_IS(probe.in.last_fault, WIRE_UNKNOWN_TYPE);
    }
}

static int number_of(const char *text)
{
    static const struct {
        const char *name;
        int number;
    } names[] = {{"bad-value", REFUSAL_BAD_VALUE}, {"limit-too-fine", REFUSAL_LIMIT_TOO_FINE}};
    for (unsigned i = 0; i < sizeof names / sizeof names[0]; i++)
        if (strncmp(text, names[i].name, strlen(names[i].name)) == 0)
            return names[i].number;
    return -2;
}

static int refusals;

/* Vectors with an answer: refused with the reason and the field, and nothing changed. */
static void bad_field_vector(const struct vector *vector)
{
    uint8_t plain[VECTOR_BYTES];
    const char *answer = strstr(vector->field[3], "answer=");
    const char *field = strstr(vector->field[3], "field=");
    if (answer == NULL || field == NULL)
        return;
    size_t length = vector_hex(vector->field[1], plain);
    talk_fresh(&probe);
    fake_run_ms(5);
    struct kept before = keep();
    int refused = talk_command(plain[1], plain + WIRE_HEADER_BYTES, length - WIRE_SHORTEST_BYTES);
    if (refused != number_of(answer + 7) || talk_detail() != atoi(field + 6))
        fprintf(stderr, "%s: refused %d field %d\n", vector->field[0], refused, talk_detail());
    CHECK_IS(refused, number_of(answer + 7));
    CHECK_IS(talk_detail(), atoi(field + 6));
    nothing_changed_since(&before);
    refusals++;
}

static void arming_without_limits_is_refused(void)
{
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_NO_LIMITS);
    CHECK_IS(talk_command(HOST_LOOK, talk_look, sizeof talk_look), REFUSAL_NO_LIMITS);
    CHECK_IS(probe.state, STATE_OFF);
}

/* Which command is taken in which state. */
static void states_are_kept_apart(void)
{
    static const uint8_t number[16] = {1, 0};
    struct limits limits = talk_no_limits();
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_CLEAR_TRIP, number, 2), REFUSAL_WRONG_STATE);
    uint8_t restore[2 + LOOK_PARAMETER_BYTES] = {1, 0};
    memcpy(restore + 2, talk_look, LOOK_PARAMETER_BYTES);
    CHECK_IS(talk_command(HOST_RESTORE, restore, sizeof restore), REFUSAL_WRONG_STATE);
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), 0);
    CHECK_IS(probe.state, STATE_CHECK);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), REFUSAL_WRONG_STATE);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_BUSY);
    CHECK_IS(talk_command(HOST_SELF_TEST, NULL, 0), REFUSAL_WRONG_STATE);
    talk_run_ms(500);
    CHECK_IS(probe.state, STATE_ON);
    uint8_t calibration[CALIBRATION_BYTES];
    for (unsigned i = 0; i < CALIBRATION_BYTES; i++)
        calibration[i] = (uint8_t)i;
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_WRONG_STATE);
    CHECK_IS(talk_command(HOST_LOOK, talk_look, sizeof talk_look), REFUSAL_WRONG_STATE);
    CHECK_IS(talk_command(HOST_CALIBRATION_WRITE, calibration, 100), REFUSAL_WRONG_STATE);
    CHECK_IS(talk_command(HOST_SELF_TEST, NULL, 0), REFUSAL_WRONG_STATE);
    CHECK_IS(talk_command(HOST_CLEAR_TRIP, number, 2), REFUSAL_WRONG_STATE);
    CHECK_IS(probe.state, STATE_ON);
}

static void each_limit_is_refused_when_it_gets_wider(void)
{
    static const uint8_t at[] = {0, 2, 4, 6, 8, 10, 12, 14, 15, 16, 17, 18, 22, 24, 30, 36, 38, 40, 42, 44};
    struct limits limits = talk_no_limits();
    limits.inrush_ms = 100;
    limits.inrush_i_counts = limits.running_i_counts = limits.running_j_counts = limits.peak_i_counts = 500;
    limits.mean_i_16ths = limits.mean_j_16ths = 5000;
    limits.i2t_budget_counts2 = 100000000;
    limits.i2t_running_counts = 100;
    limits.over_v_counts = 500;
    limits.look_over_j_counts = 500;
    limits.start_i_counts = 500;
    limits.start_ms = 500;
    for (int rail = 0; rail < RAILS; rail++) {
        limits.rail_low_counts[rail] = 100;
        limits.rail_high_counts[rail] = 900;
    }
    talk_fresh(&probe);
    fake_run_ms(5);
    talk_switch_on(&limits);
    for (uint8_t field = 1; field <= sizeof at; field++) {
        uint8_t payload[48];
        talk_limits(&limits, payload);
        struct kept before = keep();
        if (field >= 8 && field <= 11)
            payload[at[field - 1]]++;
        else if (field == 14)
            bytes_put_u16(payload + 24, 99);
        else
            bytes_put_u16(payload + at[field - 1], (uint16_t)(bytes_u16(payload + at[field - 1]) + 1));
        CHECK_IS(talk_command(HOST_LIMITS, payload, 48), REFUSAL_LIMIT_GETS_WIDER);
        CHECK_IS(talk_detail(), field);
        CHECK(memcmp(&probe.limits, &before.limits, sizeof before.limits) == 0);
    }
}

void command_tests(const char *vectors)
{
    every_wrong_length_is_dropped();
    unknown_types_are_dropped();
    vectors_each(vectors, "bad.txt", bad_field_vector);
    CHECK(refusals >= 40);
    arming_without_limits_is_refused();
    states_are_kept_apart();
    each_limit_is_refused_when_it_gets_wider();
}
