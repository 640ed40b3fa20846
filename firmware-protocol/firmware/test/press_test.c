/* Button, pedal and beeper. */
#include "check.h"
#include "hal_fake.h"
#include "talk.h"

static struct probe probe;
static struct heard heard;

static void button_is_an_off(void)
{
    struct limits limits = talk_no_limits();
    talk_switched_on(&probe, &limits);
    fake.inputs |= INPUT_BUTTON;
    fake_run_ms(10);
    CHECK_IS(probe.state, STATE_OFF);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK(talk_hear_type(MESSAGE_PRESS, &heard));
    CHECK_IS(heard.payload[0], PRESS_BUTTON);
    CHECK_IS(heard.payload[1], PRESS_DOWN);
    CHECK(talk_hear_type(MESSAGE_SWITCH, &heard));
    CHECK_IS(heard.payload[1], BY_BUTTON);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_look, sizeof talk_look), REFUSAL_BUTTON_DOWN);
    CHECK_IS(latch_number(&probe.latch), 0);
}

static void pedal_does_its_job_by_itself(void)
{
    struct limits limits = talk_no_limits();
    static const uint8_t hold = PEDAL_HOLD_TO_RUN;
    static const uint8_t mark = PEDAL_MARK;
    static const uint8_t none = 3;
    talk_fresh(&probe); /* off, unless commanded otherwise */
    fake_run_ms(5);
    talk_switch_on(&limits);
    fake.inputs |= INPUT_PEDAL;
    fake_run_ms(6);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(probe.state, STATE_OFF);
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_PEDAL, &none, 1), REFUSAL_BAD_VALUE);
    CHECK_IS(talk_command(HOST_PEDAL, &hold, 1), 0);
    uint8_t payload[48];
    talk_limits(&limits, payload);
    CHECK_IS(talk_command(HOST_LIMITS, payload, 48), 0);
    CHECK_IS(talk_command(HOST_SWITCH_ON, talk_no_look, sizeof talk_no_look), REFUSAL_FOOT_NOT_DOWN);
    fake.inputs |= INPUT_PEDAL;
    fake_run_ms(10);
    talk_switch_on(&limits);
    talk_run_ms(2000);
    CHECK_IS(probe.state, STATE_ON);
    CHECK_IS(talk_command(HOST_PEDAL, &mark, 1), REFUSAL_WRONG_STATE);
    fake.inputs &= (uint8_t)~INPUT_PEDAL;
    fake_run_ms(6);
    CHECK_IS(fake.path, HAL_PATH_NONE);
    CHECK_IS(talk_command(HOST_PEDAL, &mark, 1), 0);
    talk_switch_on(&limits);
    fake.inputs |= INPUT_PEDAL; /* a tap */
    talk_run_ms(300);
    fake.inputs &= (uint8_t)~INPUT_PEDAL;
    talk_run_ms(100);
    CHECK_IS(probe.state, STATE_ON);
    fake.inputs |= INPUT_PEDAL; /* held still */
    talk_run_ms(620);
    CHECK_IS(probe.state, STATE_OFF);
}

static void beeper_ends_by_itself(void)
{
    const uint8_t alarm = SOUND_ALARM;
    talk_fresh(&probe);
    fake_run_ms(5);
    CHECK_IS(talk_command(HOST_SOUND, &alarm, 1), 0);
    unsigned on = 0;
    for (int i = 0; i < 600; i++) {
        fake_run_ms(10);
        on += fake.beeper;
    }
    CHECK(on > 150 && on < 260); /* half of 4.1 s */
    CHECK(!fake.beeper);
}

void press_tests(void)
{
    button_is_an_off();
    pedal_does_its_job_by_itself();
    beeper_ends_by_itself();
}
