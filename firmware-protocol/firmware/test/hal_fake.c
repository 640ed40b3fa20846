#include "hal_fake.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

struct fake fake;

static void expect(bool right, const char *what)
{
    if (right)
        return;
    fprintf(stderr, "hal_fake: %s\n", what);
    abort();
}

void hal_paths_open(void)
{
    fake.path = HAL_PATH_NONE;
    fake.path_wanted = HAL_PATH_NONE;
    fake.pump = false;
}

void hal_path_at_boundary(enum hal_path path)
{
    expect(path != HAL_PATH_NONE, "opening does not wait for a boundary");
    fake.path_wanted = path;
}

static bool held;

enum hal_path hal_path_now(void)
{
    return fake.path;
}

void hal_pump(bool on)
{
    fake.pump = on;
}

bool hal_limiting_now(void)
{
    if (fake.path == HAL_PATH_SWITCH)
        return fake.limiting;
    return (fake.inputs & INPUT_SUPPLY_PRESENT) != 0 && !fake.across_blind;
}

bool hal_gate_seen(void)
{
    return !fake.gate_starved;
}

void hal_read_back(bool on)
{
    fake.moved = on;
    fake.read_backs += on;
}

void hal_fuses(uint8_t fuses[3])
{
    memcpy(fuses, fake.fuses, sizeof fake.fuses);
}

uint32_t hal_path_since_plan(void)
{
    return fake.path_plans;
}

uint8_t hal_inputs(void)
{
    return fake.inputs;
}

void hal_tripped_lamp(bool on)
{
    fake.lamp = on;
}

void hal_beeper(bool on)
{
    fake.beeper = on;
}

struct instant hal_now(void)
{
    struct instant now = {fake.plans, fake.cycles, fake.slot};
    return now;
}

uint16_t hal_plans(void)
{
    return (uint16_t)fake.plans;
}

uint8_t hal_plan_low(void)
{
    return (uint8_t)fake.plans;
}

uint8_t hal_slot(void)
{
    return fake.slot;
}

uint32_t hal_conversion_plans(void)
{
    return fake.plans;
}

uint8_t hal_interrupts_hold(void)
{
    expect(!held, "interrupts held twice");
    held = true;
    return 1;
}

void hal_interrupts_release(uint8_t before)
{
    expect(held && before == 1, "interrupts released that were not held");
    held = false;
}

bool hal_uart_take(uint8_t *byte)
{
    if (fake.to_probe_tail == fake.to_probe_head)
        return false;
    *byte = fake.to_probe[fake.to_probe_tail++ % sizeof fake.to_probe];
    return true;
}

void hal_uart_kick(void) {}

bool hal_uart_idle(void)
{
    return true;
}

void hal_uart_speed(enum hal_speed speed)
{
    expect(wire_out_used(&fake.probe->out) == 0, "speed changed while bytes wait");
    fake.speed = speed;
}

uint16_t hal_uart_overruns(void)
{
    return 0;
}

bool hal_eeprom_ready(void)
{
    return true;
}

uint8_t hal_eeprom_read(uint16_t address)
{
    expect(address < HAL_EEPROM_BYTES, "EEPROM read past its end");
    return fake.eeprom[address];
}

void hal_eeprom_write(uint16_t address, uint8_t byte)
{
    expect(address < HAL_EEPROM_BYTES, "EEPROM written past its end");
    expect(fake.path != HAL_PATH_SWITCH || address >= STORE_LATCH_AT, "boot count written while on");
    if (!fake.eeprom_worn)
        fake.eeprom[address] = byte;
    fake.eeprom_writes++;
}

uint16_t hal_self_test(void)
{
    return fake.self_test;
}

uint8_t hal_reset_cause(void)
{
    return fake.reset_cause;
}

uint16_t hal_stack_free(void)
{
    return 300;
}

uint16_t hal_late_starts(void)
{
    return 0;
}

uint8_t hal_busy_percent(void)
{
    return 50;
}

void hal_watchdog_feed(void)
{
    fake.watchdog_fed++;
}

void fake_reset_all(struct probe *probe)
{
    memset(&fake, 0, sizeof fake);
    memset(fake.eeprom, 0xFF, sizeof fake.eeprom);
    fake.probe = probe;
    fake.inputs = INPUT_CHASSIS_CLIP | INPUT_SUPPLY_PRESENT;
    memcpy(fake.fuses, (const uint8_t[]){0xFF, 0xC7, 0xFC}, sizeof fake.fuses);
    /* The zero of a blank calibration. */
    fake.counts[CHANNEL_I] = fake.counts[CHANNEL_J] = 20;
    fake.counts[CHANNEL_V] = 10;
    for (int channel = CHANNEL_R1; channel < CHANNELS; channel++)
        fake.counts[channel] = fake.look_counts[channel] = fake.on_counts[channel] = 512;
    fake_reset_chip();
}

void fake_reset_chip(void)
{
    memset(fake.probe, 0, sizeof *fake.probe);
    fake.path = HAL_PATH_NONE;
    fake.path_wanted = HAL_PATH_NONE;
    fake.plans = UINT32_MAX;
    fake.slot = PLAN_SLOTS - 1;
    fake.speed = HAL_SPEED_500K;
    fake.pump = false;
    fake.moved = false;
    fake.to_probe_head = fake.to_probe_tail = 0;
    probe_start(fake.probe);
}

void fake_conversion(void)
{
    fake.cycles = 0;
    fake.slot = (uint8_t)((fake.slot + 1) % PLAN_SLOTS);
    if (fake.slot == 0)
        fake.plans++;
    uint8_t plan = (uint8_t)(fake.plans % PLANS_PER_READING);
    if (fake.slot == 0 && plan == 0 && fake.path_wanted != HAL_PATH_NONE) {
        expect(fake.path_wanted != HAL_PATH_SWITCH || fake.pump, "the switch closes without gate volts");
        fake.path = fake.path_wanted;
        fake.path_wanted = HAL_PATH_NONE;
        fake.path_plans = fake.plans;
        fake.closings += fake.path == HAL_PATH_SWITCH;
        fake.looks += fake.path == HAL_PATH_LOOK;
    }
    if (fake.converter_stands)
        return;
    uint8_t channel = plan_channel[fake.slot];
    bool lights = fake.pump && fake.test_lights;
    const uint16_t *from = fake.path == HAL_PATH_SWITCH || lights ? fake.on_counts
                           : fake.path == HAL_PATH_LOOK           ? fake.look_counts
                                                                  : fake.counts;
    uint16_t counts = from[channel];
    if (fake.moved && fake.read_back_counts[channel] != 0)
        counts = fake.read_back_counts[channel];
    fake.cycles = 450;
    guard_conversion(&fake.probe->guard, fake.slot, plan, counts);
}

void fake_drain_line(void)
{
    uint8_t byte;
    while (!fake.line_stands && wire_out_take(&fake.probe->out, &byte)) {
        expect(fake.from_probe_length < sizeof fake.from_probe, "more sent than the test has room for");
        fake.from_probe[fake.from_probe_length++] = byte;
    }
}

void fake_run(uint32_t conversions)
{
    for (; conversions > 0; conversions--) {
        fake_conversion();
        probe_run(fake.probe);
        fake_drain_line();
    }
}

void fake_run_ms(uint32_t ms)
{
    fake_run(ms * 16);
}

void fake_receive(const uint8_t *bytes, size_t length)
{
    for (size_t at = 0; at < length; at++)
        fake.to_probe[fake.to_probe_head++ % sizeof fake.to_probe] = bytes[at];
}
