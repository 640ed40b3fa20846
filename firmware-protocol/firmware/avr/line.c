/* The serial line: two rings, two interrupts. */
#include "hal.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

#include "avr/hal_avr.h"
#include "avr/timing.h"
#include "core/probe.h"

enum { RECEIVE_PLACES = 64 };
static uint8_t receive_ring[RECEIVE_PLACES];
static volatile uint8_t receive_head; /* the interrupt's */
static volatile uint8_t receive_tail; /* the main loop's */
static volatile uint8_t receive_lost; /* modulo 256, summed by the main loop */

/*
 * The chip itself holds two bytes more, 640 cycles; interrupts are off for 85 at most, so its own overrun flag is not
 * asked for.
 */
ISR(USART_RX_vect)
{
    uint8_t byte = UDR0;
    uint8_t head = receive_head;
    uint8_t next = (head + 1) & (RECEIVE_PLACES - 1);
    if (next == receive_tail) {
        receive_lost++;
        return;
    }
    receive_ring[head] = byte; /* one with a wrong stop bit too: the checksum finds it */
    receive_head = next;
}

ISR(USART_UDRE_vect)
{
    uint8_t byte;
    if (wire_out_take(&probe.out, &byte)) {
        UDR0 = byte;
    } else {
        UCSR0B &= (uint8_t)~BIT(UDRIE0);
        UCSR0A = BIT(TXC0); /* cleared by writing a one: set again when the last byte has left */
    }
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
