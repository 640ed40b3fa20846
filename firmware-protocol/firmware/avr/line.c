/* The serial line: two rings, two interrupts. */
#include "hal.h"

#include <avr/interrupt.h>
#include <avr/io.h>
#include <util/atomic.h>

#include "avr/hal_avr.h"
#include "avr/timing.h"
#include "core/compiler.h"
#include "core/probe.h"

enum { RECEIVE_PLACES = 64, FREE_TO_GO_ON = 48 };
static uint8_t receive_ring[RECEIVE_PLACES];
static volatile uint8_t receive_head; /* the interrupt's */
static volatile uint8_t receive_tail; /* the main loop's */

/*
 * The chip itself holds two bytes more, 640 cycles; interrupts are off for 85 at most. A full ring turns its own
 * interrupt off (head = tail then means full), so that a line that never rests costs no time for bytes that are lost
 * anyhow; when there is room for a few frames in a row it continues.
 */
ISR(USART_RX_vect)
{
    uint8_t head = receive_head;
    receive_ring[head] = UDR0; /* one with a wrong stop bit too: the checksum finds it */
    head = (head + 1) & (RECEIVE_PLACES - 1);
    receive_head = head;
    if (head == receive_tail)
        UCSR0B &= (uint8_t)~BIT(RXCIE0);
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

static uint16_t overruns;

static CORE_RARE void go_on_receiving(void)
{
    if (UCSR0A & BIT(DOR0)) /* holds until the bytes behind it are read: at least one was lost */
        overruns++;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        UCSR0B |= BIT(RXCIE0);
    }
}

bool hal_uart_take(uint8_t *byte)
{
    uint8_t tail = receive_tail;
    bool stopped = (UCSR0B & BIT(RXCIE0)) == 0;
    if (tail == receive_head && !stopped)
        return false;
    *byte = receive_ring[tail];
    tail = (tail + 1) & (RECEIVE_PLACES - 1);
    receive_tail = tail;
    if (stopped && ((uint8_t)(tail - receive_head) & (RECEIVE_PLACES - 1)) >= FREE_TO_GO_ON)
        go_on_receiving();
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
    return overruns;
}
