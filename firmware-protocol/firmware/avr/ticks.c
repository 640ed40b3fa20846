/*
 * Time, conversions, switch: what happens every 62.5 us. Interrupts are off for no longer than 85 cycles anywhere: the
 * converter's handler lets others in as soon as it has its result, the critical sections of the core are a few
 * instructions.
 */
#include "hal.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/sleep.h>
#include <avr/wdt.h>
#include <util/atomic.h>

#include "avr/hal_avr.h"
#include "avr/pins.h"
#include "avr/timing.h"
#include "core/compiler.h"
#include "core/probe.h"

/*
 * Slot and plan belong to the tick; the converter's handler only reads them. The tick counts plans in one byte, to be
 * short; who needs the whole number brings it forward, which happens far oftener than every 256 plans.
 */
#define SLOT_NOW GPIOR1 /* registers of general purpose: shorter to reach than memory */
#define PLAN_LOW GPIOR2
static volatile uint8_t plans_left = 1; /* of this reading, this one counted; downwards is a cycle shorter */
static uint32_t plans;
static uint8_t plans_low; /* PLAN_LOW, as far as plans has followed */
static volatile uint16_t late_starts;
static volatile uint8_t path_plan_low; /* the plan in which the path closed last: a wish stands until this is kept */

/* ---- switch and look path: the port is the only place that knows what is closed ---- */

/*
 * The tick toggles the two pins of PUMP_WANTED as long as the converter's handler has run a short while ago, so that the
 * gate loses its volts whatever has come to stand: clock, tick, converter, and with the watchdog the main loop.
 */
#define PUMP_WANTED OCR0A /* timer 0 stands, and its registers are shorter to reach than memory */
#define PUMP_ALIVE OCR0B
enum { PUMP_PINS = BIT(PIN_PUMP_A) | BIT(PIN_PUMP_B), PUMP_ALIVE_TICKS = 3 };

static inline void pump_stop(void)
{
    PUMP_WANTED = 0;
    PORTD &= (uint8_t)~BIT(PIN_PUMP_A);
    PORTD &= (uint8_t)~BIT(PIN_PUMP_B);
}

void hal_pump(bool on)
{
    if (!on) {
        pump_stop();
    } else if (PUMP_WANTED == 0) {
        PORTD |= BIT(PIN_PUMP_A);
        PUMP_WANTED = PUMP_PINS;
    }
}

bool hal_limiting_now(void)
{
    return (PIND & BIT(PIN_ACROSS)) == 0;
}

bool hal_gate_seen(void)
{
    return (PINB & BIT(PIN_SUPPLY_REVERSED)) == 0;
}

static inline void paths_open(void)
{
    /* Wishes first: a tick in between may close once more what the next instruction opens. */
    GPIOR0 &= (uint8_t)~BIT(CLOSE_SWITCH_BIT);
    GPIOR0 &= (uint8_t)~BIT(CLOSE_LOOK_BIT);
    PORTB &= (uint8_t)~BIT(PIN_RUN);
    PORTB &= (uint8_t)~BIT(PIN_LOOK_PATH);
    pump_stop();
}

void hal_paths_open(void)
{
    if (GPIOR0 & (BIT(CLOSE_SWITCH_BIT) | BIT(CLOSE_LOOK_BIT)))
        path_plan_low = PLAN_LOW; /* it may have closed in this plan, and its first conversion has not ended yet */
    paths_open();
}

void hal_path_at_boundary(enum hal_path path)
{
    if (path == HAL_PATH_SWITCH)
        GPIOR0 |= BIT(CLOSE_SWITCH_BIT);
    else
        GPIOR0 |= BIT(CLOSE_LOOK_BIT);
}

enum hal_path hal_path_now(void)
{
    uint8_t port = PORTB;
    if (port & BIT(PIN_RUN))
        return HAL_PATH_SWITCH;
    return port & BIT(PIN_LOOK_PATH) ? HAL_PATH_LOOK : HAL_PATH_NONE;
}

uint32_t hal_path_since_plan(void)
{
    uint32_t now = hal_now().plans; /* asked right after the closing: less than 256 plans ago */
    return now - (uint8_t)((uint8_t)now - path_plan_low);
}

/*
 * In the tick alone, so the plan is kept later, where interrupts are on: by the first conversion's handler, or by who
 * opens before that. The look path opens in the same instruction in which the switch closes.
 */
static inline void close_wanted(void)
{
    if (GPIOR0 & BIT(CLOSE_SWITCH_BIT)) {
        PORTB = (uint8_t)((PORTB & ~BIT(PIN_LOOK_PATH)) | BIT(PIN_RUN));
    }
    if (GPIOR0 & BIT(CLOSE_LOOK_BIT))
        PORTB |= BIT(PIN_LOOK_PATH);
}

/* ---- time awake: the main loop's rounds are measured with Timer 2, 4 us a step ---- */

enum { STEPS_PER_PERCENT_OF_A_PLAN = PLAN_US / 4 / 100, INTERRUPTS_PERCENT = 35 };
static uint16_t awake_steps; /* since last asked: in 200 ms 50 000 at most */
static uint8_t round_began;  /* a round takes under 1 ms, after which the timer has turned over */
static uint16_t busy_from_plans;

void hal_sleep_unless_busy(void)
{
    awake_steps = (uint16_t)(awake_steps + (uint8_t)(TCNT2 - round_began));
    for (;;) {
        cli();
        if (!probe_may_sleep(&probe))
            break;
        sei(); /* takes effect after the next instruction, so no interrupt can come before the sleep */
        sleep_cpu();
        __asm__ volatile("nop\n\tnop"); /* the simulator serves an interrupt only after the instruction behind the sleep */
    }
    sei();
    round_began = TCNT2;
}

/*
 * What interrupts take between the rounds is reckoned, not measured, because measuring it cost a twelfth of all time:
 * 350 of 1000 cycles, as seen in the simulated chip with the raw stream on (tick 66, converter 200, line 85).
 */
uint8_t hal_busy_percent(void)
{
    uint16_t now = hal_plans();
    uint16_t plans_passed = (uint16_t)(now - busy_from_plans);
    uint16_t steps = awake_steps;
    busy_from_plans = now;
    awake_steps = 0;
    if (plans_passed == 0 || plans_passed > 130) /* the steps have wrapped: only a host that comes back sees this */
        return 100;
    uint16_t percent = (uint16_t)(steps / (uint16_t)(plans_passed * STEPS_PER_PERCENT_OF_A_PLAN));
    if (percent > 100)
        percent = 100;
    return (uint8_t)(percent + (100u - percent) * INTERRUPTS_PERCENT / 100u);
}

/* ---- the tick: one conversion every 62.5 us ---- */

ISR(TIMER1_COMPA_vect)
{
    uint8_t alive = PUMP_ALIVE;
    if (alive != 0) {
        PUMP_ALIVE = (uint8_t)(alive - 1);
        PIND = PUMP_WANTED; /* toggles them */
    }
    uint8_t next = (SLOT_NOW + 1) & (PLAN_SLOTS - 1);
    SLOT_NOW = next;
    if (next == 0) {
        PLAN_LOW++;
        uint8_t left = (uint8_t)(plans_left - 1);
        if (left == 0) {
            left = PLANS_PER_READING;
            close_wanted();
        }
        plans_left = left;
    }
    if (GPIOR0 & BIT(LENT_BIT))
        return;
    if (ADCSRA & BIT(ADSC)) {
        late_starts++;
    } else {
        ADMUX = plan_channel[next];
        ADCSRA = ADC_RUN | BIT(ADSC);
    }
}

static CORE_RARE void bring_plans_forward(void)
{
    uint8_t low = PLAN_LOW;
    if ((GPIOR0 & BIT(CLOSE_SWITCH_BIT) && PORTB & BIT(PIN_RUN)) ||
        (GPIOR0 & BIT(CLOSE_LOOK_BIT) && PORTB & BIT(PIN_LOOK_PATH) && !(GPIOR0 & BIT(CLOSE_SWITCH_BIT)))) {
        /* closed at the start of this plan: the wish is done */
        path_plan_low = low;
        GPIOR0 &= (uint8_t)~BIT(CLOSE_SWITCH_BIT);
        GPIOR0 &= (uint8_t)~BIT(CLOSE_LOOK_BIT);
    }
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        plans += (uint8_t)(low - plans_low);
        plans_low = low;
    }
}

/* A conversion ends about 450 cycles after its tick, so slot and plan are still its own. */
ISR(ADC_vect)
{
    uint16_t counts = ADC;
    uint8_t of_slot = SLOT_NOW;
    uint8_t left = plans_left;
    PUMP_ALIVE = PUMP_ALIVE_TICKS;
    sei();
    guard_conversion(&probe.guard, of_slot, (uint8_t)(PLANS_PER_READING - left), counts);
    if (PLAN_LOW != plans_low)
        bring_plans_forward();
}

/* Where no interrupt can come between, or in the converter's handler, over which the main loop stands still. */
static inline uint32_t plans_now(void)
{
    return plans + (uint8_t)(PLAN_LOW - plans_low);
}

uint32_t hal_conversion_plans(void)
{
    return plans_now();
}

uint16_t hal_plans(void)
{
    uint16_t now;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        now = (uint16_t)plans_now();
    }
    return now;
}

uint8_t hal_plan_low(void)
{
    return PLAN_LOW;
}

uint8_t hal_slot(void)
{
    return SLOT_NOW;
}

struct instant hal_now(void)
{
    struct instant now;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        now.cycles = TCNT1;
        now.plans = plans_now();
        now.slot = SLOT_NOW;
        /* The timer may have turned over while the tick was kept waiting. */
        if ((TIFR1 & BIT(OCF1A)) && now.cycles < CYCLES_PER_SLOT / 2)
            now.slot++;
    }
    if (now.slot == PLAN_SLOTS) {
        now.slot = 0;
        now.plans++;
    }
    return now;
}

uint8_t hal_interrupts_hold(void)
{
    uint8_t held = SREG;
    cli();
    return held;
}

void hal_interrupts_release(uint8_t held)
{
    SREG = held;
}

uint16_t hal_late_starts(void)
{
    uint16_t late;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        late = late_starts;
    }
    return late;
}

void hal_watchdog_feed(void)
{
    wdt_reset();
}

void ticks_start(void)
{
    SLOT_NOW = PLAN_SLOTS - 1;
    PLAN_LOW = UINT8_MAX; /* the first tick begins plan 0 */
    plans_low = UINT8_MAX;
    plans = UINT32_MAX;
    TCCR2B = BIT(CS22); /* 4 us */
}

void hal_run(void)
{
    SMCR = BIT(SE); /* sleep enabled, mode idle: timers, converter and line go on */
    ADCSRA |= BIT(ADIF) | BIT(ADIE);
    TCCR1B = BIT(WGM12); /* mode before value, or the value waits for a turn of the timer */
    OCR1A = CYCLES_PER_SLOT - 1;
    TCNT1 = 0;
    TCCR1B = BIT(WGM12) | BIT(CS10);
    TIMSK1 = BIT(OCIE1A);
    sei();
}
