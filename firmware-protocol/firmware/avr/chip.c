/* Inputs, lamps, EEPROM, self-test and start. Nothing here is in a hurry. */
#include "hal.h"

#include <avr/boot.h>
#include <avr/io.h>
#include <avr/pgmspace.h>
#include <avr/wdt.h>
#include <util/atomic.h>
#include <util/delay_basic.h>

#include <string.h>

#include "avr/hal_avr.h"
#include "avr/pins.h"
#include "avr/program_crc.h"
#include "avr/timing.h"
#include "core/crc16.h"
#include "core/wire.h"

uint8_t hal_inputs(void)
{
    uint8_t b = PINB;
    uint8_t d = PIND;
    uint8_t inputs = 0;
    bool on = (PORTB & BIT(PIN_RUN)) != 0;
    bool across = !(d & BIT(PIN_ACROSS));
    if (!(d & BIT(PIN_CHASSIS_CLIP)))
        inputs |= INPUT_CHASSIS_CLIP;
    if (on || across)
        inputs |= INPUT_SUPPLY_PRESENT;
    if (!on && !(b & BIT(PIN_SUPPLY_REVERSED)))
        inputs |= INPUT_SUPPLY_REVERSED;
    if (!(d & BIT(PIN_BUTTON)))
        inputs |= INPUT_BUTTON;
    if (!(d & BIT(PIN_PEDAL)))
        inputs |= INPUT_PEDAL;
    if (on && across)
        inputs |= INPUT_LIMITING;
    return inputs | INPUT_ISOLATED; /* there is no other build */
}

void hal_read_back(bool on)
{
    if (on)
        DDRB &= (uint8_t)~BIT(PIN_READ_BACK);
    else
        DDRB |= BIT(PIN_READ_BACK);
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

/* ---- self-test ---- */

static uint8_t reset_cause;
static uint16_t start_faults; /* found before anything ran: RAM */

uint8_t hal_reset_cause(void)
{
    return reset_cause;
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
    return true;
}

/* Crystal and slowest start; boot loader off, watchdog always on, EEPROM kept, serial programming on; brown-out 4.3 V. */
enum { FUSE_LOW = 0xFF, FUSE_HIGH = 0xC7, FUSE_EXTENDED = 0xFC };

static uint8_t fuses[3]; /* low, high, extended */

void hal_fuses(uint8_t read[3])
{
    memcpy(read, fuses, sizeof fuses);
}

/* While a byte goes into the EEPROM the chip hides its fuses (data sheet 27.8.8). */
static void read_fuses(void)
{
    static const uint8_t addresses[3] = {GET_LOW_FUSE_BITS, GET_HIGH_FUSE_BITS, GET_EXTENDED_FUSE_BITS};
    while (!hal_eeprom_ready())
        continue;
    for (uint8_t at = 0; at < 3; at++) {
        ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
        {
            fuses[at] = boot_lock_fuse_bits_get(addresses[at]);
        }
    }
}

/* Of the extended byte three bits are there, the others read as ones or not at all. */
static bool fuses_right(void)
{
    read_fuses();
    return fuses[0] == FUSE_LOW && fuses[1] == FUSE_HIGH && (fuses[2] & 7) == (FUSE_EXTENDED & 7);
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
    if (!fuses_right())
        faults |= SELF_TEST_FUSES;
    if (!program_holds())
        faults |= SELF_TEST_PROGRAM;
    if (hal_stack_free() < STACK_SHORT_BYTES)
        faults |= SELF_TEST_STACK;
    ADCSRA |= interrupt;
    GPIOR0 &= (uint8_t)~BIT(LENT_BIT);
    return faults;
}

/* ---- start ---- */

void hal_outputs_off(void)
{
    PORTB = 0;
    DDRB = BIT(PIN_RUN) | BIT(PIN_LOOK_PATH) | BIT(PIN_BEEPER) | BIT(PIN_TRIPPED_LAMP) | BIT(PIN_READ_BACK);
    PORTD = 0;
    DDRD = BIT(PIN_PUMP_A) | BIT(PIN_PUMP_B);
}

void hal_start(void)
{
    reset_cause = MCUSR & 0x0F;
    MCUSR = 0;
    wdt_enable(WDTO_120MS);
    ticks_start();
    if (!ram_holds())
        start_faults |= SELF_TEST_RAM;
    wdt_reset();
    DIDR0 = 0x3F; /* digital buffers of the converter's inputs off */
    ACSR = BIT(ACD);
    ADMUX = CHANNEL_I;              /* outer reference */
    ADCSRA = BIT(ADEN) | ADC_PRESCALER_BITS;
    convert_alone(); /* the first takes 25 clocks, longer than the others */
    UBRR0 = UBRR_500K;
    UCSR0C = BIT(UCSZ01) | BIT(UCSZ00);
    UCSR0B = BIT(RXEN0) | BIT(TXEN0) | BIT(RXCIE0);
}
