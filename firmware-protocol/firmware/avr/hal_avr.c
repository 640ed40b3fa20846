/*
 * The hardware of hal.h on the ATmega328P. Interrupts are off for no longer than 85 cycles anywhere: the converter's
 * handler lets others in as soon as it has its result, the critical sections of the core are a few instructions.
 */
#include "hal.h"

#include <avr/boot.h>
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <avr/sleep.h>
#include <avr/wdt.h>
#include <util/atomic.h>
#include <util/delay_basic.h>

#include "avr/hal_avr.h"
#include "avr/pins.h"
#include "avr/program_crc.h"
#include "avr/timing.h"
#include "core/compiler.h"
#include "core/crc16.h"
#include "core/probe.h"
#include "core/wire.h"

#define BIT(n) ((uint8_t)(1u << (n)))
#define ADC_RUN (BIT(ADEN) | BIT(ADIE) | ADC_PRESCALER_BITS)

extern struct probe probe;

/*
 * Slot and plan belong to the tick; the converter's handler only reads them. The tick counts plans in one byte, to be
 * short; who needs the whole number brings it forward, which happens far oftener than every 256 plans.
 */
#define SLOT_NOW GPIOR1 /* registers of general purpose: shorter to reach than memory */
#define PLAN_LOW GPIOR2
static volatile uint8_t plan_of_reading = PLANS_PER_READING - 1;
static uint32_t plans;
static uint8_t plans_low; /* PLAN_LOW, as far as plans has followed */
static volatile uint16_t late_starts;
static uint8_t path_plan_low; /* the plan in which the path closed */

/* Bits of GPIOR0, set and cleared by single instructions. */
enum {
    ASLEEP_BIT, /* the main loop sleeps */
    LENT_BIT,   /* the converter does something else than the plan */
    CLOSE_LOOK_BIT,
    CLOSE_SWITCH_BIT /* at the next boundary */
};

/* ---- switch and look path: the port is the only place that knows what is closed ---- */

static inline void paths_open(void)
{
    /* Wishes first: a tick in between may close once more what the next instruction opens. */
    GPIOR0 &= (uint8_t)~BIT(CLOSE_SWITCH_BIT);
    GPIOR0 &= (uint8_t)~BIT(CLOSE_LOOK_BIT);
    PORTD &= (uint8_t)~BIT(PIN_SWITCH);
    PORTD &= (uint8_t)~BIT(PIN_LOOK_PATH);
}

void hal_paths_open(void)
{
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
    uint8_t port = PORTD;
    if (port & BIT(PIN_SWITCH))
        return HAL_PATH_SWITCH;
    return port & BIT(PIN_LOOK_PATH) ? HAL_PATH_LOOK : HAL_PATH_NONE;
}

uint32_t hal_path_since_plan(void)
{
    uint32_t now = hal_now().plans; /* asked right after the closing: less than 256 plans ago */
    return now - (uint8_t)((uint8_t)now - path_plan_low);
}

/* In the tick alone. The look path opens in the same instruction pair in which the switch closes. */
static inline void close_wanted(void)
{
    if (GPIOR0 & BIT(CLOSE_SWITCH_BIT)) {
        PORTD |= BIT(PIN_SWITCH);
        PORTD &= (uint8_t)~BIT(PIN_LOOK_PATH);
    }
    if (GPIOR0 & BIT(CLOSE_LOOK_BIT))
        PORTD |= BIT(PIN_LOOK_PATH);
}

/*
 * ---- time asleep: Timer 2 counts half microseconds; the first handler after a sleep notes when it ended. The tick does
 * not, because it has to be short: it comes when Timer 1 is at 0, so its time is known afterwards. ----
 */

static volatile uint8_t awake_at;
#define NOTE_AWAKE()                                                                                                  \
    do {                                                                                                             \
        if (GPIOR0 & BIT(ASLEEP_BIT)) {                                                                              \
            awake_at = TCNT2;                                                                                        \
            GPIOR0 &= (uint8_t)~BIT(ASLEEP_BIT);                                                                     \
        }                                                                                                            \
    } while (0)
static uint16_t asleep_halfus; /* since the last plan, in which it is at most 4000 */
static uint32_t asleep_sum_halfus;
static uint32_t busy_from_plans;

/* Goes back to sleep at once when an interrupt has left nothing to do. */
void hal_sleep_unless_busy(void)
{
    for (;;) {
        cli();
        if (!probe_may_sleep(&probe)) {
            sei();
            return;
        }
        uint8_t from = TCNT2;
        GPIOR0 |= BIT(ASLEEP_BIT);
        sei(); /* takes effect after the next instruction, so no interrupt can come before the sleep */
        sleep_cpu();
        uint8_t until = awake_at;
        if (GPIOR0 & BIT(ASLEEP_BIT)) {
            GPIOR0 &= (uint8_t)~BIT(ASLEEP_BIT);
            until = (uint8_t)(TCNT2 - (uint8_t)(TCNT1 >> 3)); /* under 2048 cycles, so a byte */
        }
        asleep_halfus = (uint16_t)(asleep_halfus + (uint8_t)(until - from));
    }
}

uint8_t hal_busy_percent(void)
{
    uint32_t now = hal_now().plans;
    uint32_t all_halfus = (now - busy_from_plans) * (2uL * PLAN_US);
    uint32_t awake_halfus = all_halfus > asleep_sum_halfus ? all_halfus - asleep_sum_halfus : 0;
    uint32_t share = all_halfus >= 100 ? awake_halfus / (all_halfus / 100) : 100;
    busy_from_plans = now;
    asleep_sum_halfus = 0;
    return share > 100 ? 100 : (uint8_t)share;
}

/* ---- the tick: one conversion every 62.5 us ---- */

ISR(TIMER1_COMPA_vect)
{
    uint8_t next = (SLOT_NOW + 1) & (PLAN_SLOTS - 1);
    SLOT_NOW = next;
    if (next == 0) {
        PLAN_LOW++;
        uint8_t plan = (uint8_t)(plan_of_reading + 1);
        if (plan == PLANS_PER_READING) {
            plan = 0;
            close_wanted();
        }
        plan_of_reading = plan;
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
    if ((GPIOR0 & BIT(CLOSE_SWITCH_BIT) && PORTD & BIT(PIN_SWITCH)) ||
        (GPIOR0 & BIT(CLOSE_LOOK_BIT) && PORTD & BIT(PIN_LOOK_PATH) && !(GPIOR0 & BIT(CLOSE_SWITCH_BIT)))) {
        path_plan_low = low; /* closed at the start of this plan: the wish is done */
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
    NOTE_AWAKE();
    uint16_t counts = ADC;
    uint8_t of_slot = SLOT_NOW;
    uint8_t of_plan = plan_of_reading;
    sei();
    guard_conversion(&probe.guard, of_slot, of_plan, counts);
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

ISR(ANALOG_COMP_vect)
{
    PORTD &= (uint8_t)~BIT(PIN_SWITCH);
    guard_comparator(&probe.guard);
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

/* ---- inputs and outputs ---- */

uint8_t hal_inputs(void)
{
    uint8_t b = PINB;
    uint8_t d = PIND;
    uint8_t inputs = 0;
    if (!(b & BIT(PIN_CHASSIS_CLIP)))
        inputs |= INPUT_CHASSIS_CLIP;
    if (b & BIT(PIN_SUPPLY_PRESENT))
        inputs |= INPUT_SUPPLY_PRESENT;
    if (b & BIT(PIN_SUPPLY_REVERSED))
        inputs |= INPUT_SUPPLY_REVERSED;
    if (!(d & BIT(PIN_BUTTON)))
        inputs |= INPUT_BUTTON;
    if (!(d & BIT(PIN_PEDAL)))
        inputs |= INPUT_PEDAL;
    if (!(b & BIT(PIN_ISOLATED_LINK)))
        inputs |= INPUT_ISOLATED;
    if (ACSR & BIT(ACO))
        inputs |= INPUT_COMPARATOR;
    return inputs;
}

void hal_tripped_lamp(bool on)
{
    if (on)
        PORTB |= BIT(PIN_TRIPPED_LAMP);
    else
        PORTB &= (uint8_t)~BIT(PIN_TRIPPED_LAMP);
}

void hal_beeper(bool on)
{
    if (on)
        PORTB |= BIT(PIN_BEEPER);
    else
        PORTB &= (uint8_t)~BIT(PIN_BEEPER);
}

/* ---- serial line ---- */

enum { RECEIVE_PLACES = 64 };
static uint8_t receive_ring[RECEIVE_PLACES];
static volatile uint8_t receive_head; /* the interrupt's */
static volatile uint8_t receive_tail; /* the main loop's */
static volatile uint8_t receive_lost; /* modulo 256, summed by the main loop */

ISR(USART_RX_vect)
{
    NOTE_AWAKE();
    uint8_t status = UCSR0A;
    uint8_t byte = UDR0;
    uint8_t head = receive_head;
    uint8_t next = (head + 1) & (RECEIVE_PLACES - 1);
    if (status & BIT(DOR0))
        receive_lost++;
    if (next == receive_tail) {
        receive_lost++;
        return;
    }
    receive_ring[head] = byte; /* one with a wrong stop bit too: the checksum finds it */
    receive_head = next;
}

ISR(USART_UDRE_vect)
{
    NOTE_AWAKE();
    uint8_t byte;
    if (wire_out_take(&probe.out, &byte)) {
        UDR0 = byte;
    } else {
        UCSR0B &= (uint8_t)~BIT(UDRIE0);
        UCSR0A = BIT(TXC0); /* cleared by writing a one: set again when the last byte has left */
    }
}

uint8_t hal_uart_waiting(void)
{
    return (uint8_t)(receive_head - receive_tail) & (RECEIVE_PLACES - 1);
}

bool hal_uart_take(uint8_t *byte)
{
    uint8_t tail = receive_tail;
    if (tail == receive_head)
        return false;
    *byte = receive_ring[tail];
    receive_tail = (tail + 1) & (RECEIVE_PLACES - 1);
    return true;
}

void hal_uart_kick(void)
{
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        UCSR0B |= BIT(UDRIE0);
    }
}

bool hal_uart_idle(void)
{
    return (UCSR0B & BIT(UDRIE0)) == 0 && (UCSR0A & BIT(TXC0)) != 0;
}

void hal_uart_speed(enum hal_speed speed)
{
    UBRR0 = speed == HAL_SPEED_250K ? UBRR_250K : UBRR_500K;
}

uint16_t hal_uart_overruns(void)
{
    static uint16_t sum;
    static uint8_t seen; /* asked five times a second, in which at most 10 000 bytes come: held apart by a whole ring */
    uint8_t lost = receive_lost;
    sum = (uint16_t)(sum + (uint8_t)(lost - seen));
    seen = lost;
    return sum;
}

/* ---- EEPROM ---- */

bool hal_eeprom_ready(void)
{
    return (EECR & BIT(EEPE)) == 0;
}

uint8_t hal_eeprom_read(uint16_t address)
{
    while (!hal_eeprom_ready())
        continue;
    EEAR = address;
    EECR |= BIT(EERE);
    return EEDR;
}

void hal_eeprom_write(uint16_t address, uint8_t byte)
{
    EEAR = address;
    EEDR = byte;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE) /* the second bit must follow within four cycles */
    {
        EECR |= BIT(EEMPE);
        EECR |= BIT(EEPE);
    }
}

/* ---- the chip itself ---- */

static uint8_t reset_cause;
static uint16_t start_faults; /* found before anything ran: RAM */

uint8_t hal_reset_cause(void)
{
    return reset_cause;
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

extern uint8_t _end; /* first byte after the static data (linker) */
enum { PAINT = 0xC5, STACK_SHORT_BYTES = 64 };

/* Before anything stands on the stack: everything free is painted. */
__asm__(".section .init3,\"ax\",@progbits\n"
        "    ldi r30, lo8(_end)\n"
        "    ldi r31, hi8(_end)\n"
        "    ldi r24, 0xC5\n"
        "    ldi r25, hi8(0x0900)\n"
        "1:  st Z+, r24\n"
        "    cpi r30, lo8(0x0900)\n"
        "    cpc r31, r25\n"
        "    brlo 1b\n"
        ".text\n");

uint16_t hal_stack_free(void)
{
    const uint8_t *at = &_end;
    while (*at == PAINT && at < (const uint8_t *)RAMEND)
        at++;
    return (uint16_t)(at - &_end);
}

/* Writes both patterns to each byte and puts back what stood there; only before interrupts are on. */
static bool ram_holds(void)
{
    for (volatile uint8_t *at = (volatile uint8_t *)RAMSTART; at <= (volatile uint8_t *)RAMEND; at++) {
        register uint8_t kept = *at;
        *at = 0x55;
        register uint8_t first = *at;
        *at = 0xAA;
        register uint8_t second = *at;
        *at = kept;
        if (first != 0x55 || second != 0xAA)
            return false;
    }
    return true;
}

extern uint8_t __data_load_end; /* end of the program with its initial data (linker) */

static bool program_holds(void)
{
    uint16_t crc = CRC16_START;
    uint16_t end = (uint16_t)&__data_load_end;
    uint16_t hole = (uint16_t)&program_crc.crc;
    for (uint16_t at = 0; at < end; at++) {
        if (at != hole && at != hole + 1)
            crc = crc16_add(crc, pgm_read_byte(at));
        if ((at & 1023) == 0)
            wdt_reset(); /* about 45 cycles a byte: 3 ms between two */
    }
    return crc == pgm_read_word(&program_crc.crc);
}

static bool converter_dead;

static uint16_t convert_alone(void)
{
    uint16_t patience = 1000; /* a conversion takes 416 cycles, a round of the loop more than four */
    ADCSRA |= BIT(ADSC);
    while ((ADCSRA & BIT(ADSC)) && --patience > 0)
        continue;
    converter_dead |= patience == 0;
    ADCSRA |= BIT(ADIF);
    return ADC;
}

/* 1.1 V against 4.096 V is 275 counts; 10 % either way. The internal reference needs 70 us at most to start. */
static bool reference_holds(void)
{
    ADMUX = MUX_INTERNAL_1V1;
    _delay_loop_2(2000); /* 0.5 ms */
    convert_alone();
    uint16_t counts = convert_alone();
    return counts >= 248 && counts <= 302;
}

/* At rest no input of the supply module stands at its end; a current there with everything open is a fault. */
static bool inputs_free(void)
{
    for (uint8_t channel = CHANNEL_I; channel <= CHANNEL_V; channel++) {
        ADMUX = channel;
        convert_alone();
        if (convert_alone() >= COUNTS_HIGHEST)
            return false;
    }
    return (ACSR & BIT(ACO)) == 0;
}

uint16_t hal_self_test(void)
{
    uint16_t faults = start_faults;
    uint8_t interrupt = ADCSRA & BIT(ADIE);
    GPIOR0 |= BIT(LENT_BIT);
    ADCSRA &= (uint8_t)~BIT(ADIE);
    converter_dead = false;
    convert_alone(); /* ends what the tick has begun, too */
    if (!reference_holds())
        faults |= SELF_TEST_REFERENCE;
    if (!inputs_free())
        faults |= SELF_TEST_INPUT_STUCK;
    if (converter_dead)
        faults |= SELF_TEST_CONVERTER;
    if (!program_holds())
        faults |= SELF_TEST_PROGRAM;
    if (hal_stack_free() < STACK_SHORT_BYTES)
        faults |= SELF_TEST_STACK;
    ADCSRA |= interrupt;
    GPIOR0 &= (uint8_t)~BIT(LENT_BIT);
    return faults;
}

void hal_watchdog_feed(void)
{
    wdt_reset();
    asleep_sum_halfus += asleep_halfus;
    asleep_halfus = 0;
}

/* ---- start ---- */

void hal_outputs_off(void)
{
    PORTD = BIT(PIN_BUTTON) | BIT(PIN_PEDAL);
    DDRD = BIT(PIN_SWITCH) | BIT(PIN_LOOK_PATH);
    PORTB = BIT(PIN_CHASSIS_CLIP) | BIT(PIN_ISOLATED_LINK);
    DDRB = BIT(PIN_BEEPER) | BIT(PIN_TRIPPED_LAMP);
}

void hal_start(void)
{
    reset_cause = MCUSR & 0x0F;
    MCUSR = 0;
    wdt_enable(WDTO_120MS);
    SLOT_NOW = PLAN_SLOTS - 1;
    PLAN_LOW = UINT8_MAX; /* the first tick begins plan 0 */
    plans_low = UINT8_MAX;
    plans = UINT32_MAX;
    if (!ram_holds())
        start_faults |= SELF_TEST_RAM;
    wdt_reset();
    DIDR0 = 0x3F; /* digital buffers of converter and comparator inputs off */
    DIDR1 = BIT(AIN0D) | BIT(AIN1D);
    ACSR = BIT(ACIS1) | BIT(ACIS0); /* rising edge, interrupt still off */
    TCCR2B = BIT(CS21);             /* 0.5 us */
    ADMUX = CHANNEL_I;              /* outer reference */
    ADCSRA = BIT(ADEN) | ADC_PRESCALER_BITS;
    convert_alone(); /* the first takes 25 clocks, longer than the others */
    UBRR0 = UBRR_500K;
    UCSR0C = BIT(UCSZ01) | BIT(UCSZ00);
    UCSR0B = BIT(RXEN0) | BIT(TXEN0) | BIT(RXCIE0);
}

void hal_run(void)
{
    SMCR = BIT(SE); /* sleep enabled, mode idle: timers, converter and line go on */
    ADCSRA |= BIT(ADIF) | BIT(ADIE);
    ACSR |= BIT(ACI);
    ACSR |= BIT(ACIE);
    TCCR1B = BIT(WGM12); /* mode before value, or the value waits for a turn of the timer */
    OCR1A = CYCLES_PER_SLOT - 1;
    TCNT1 = 0;
    TCCR1B = BIT(WGM12) | BIT(CS10);
    TIMSK1 = BIT(OCIE1A);
    sei();
}
