#include "serial.h"

/* Register addresses of the ATmega328P (data sheet, register summary). */
enum { REG_UCSRA = 0xC0, REG_UBRRL = 0xC4, REG_UBRRH = 0xC5 };
enum { BIT_U2X = 1 };

/* The simulator counts a parity bit that is not there: 11 bit times a byte. The chip's 8N1 takes 10. */
static uint32_t cycles_per_byte(const struct chip *chip)
{
    const uint8_t *data = chip->avr->data;
    uint32_t divisor = (uint32_t)(data[REG_UBRRL] | (data[REG_UBRRH] & 0x0F) << 8) + 1;
    return divisor * (data[REG_UCSRA] & 1 << BIT_U2X ? 8 : 16) * 10;
}

static void byte_sent(avr_irq_t *irq, uint32_t value, void *param)
{
    struct chip *chip = param;
    (void)irq;
    chip->uart->cycles_per_byte = cycles_per_byte(chip);
    chip->surroundings->byte_sent(chip, (uint8_t)value);
}

static void receiver_xon(avr_irq_t *irq, uint32_t value, void *param)
{
    (void)irq;
    (void)value;
    ((struct chip *)param)->receiver_full = false;
}

static void receiver_xoff(avr_irq_t *irq, uint32_t value, void *param)
{
    (void)irq;
    if (value != 0)
        ((struct chip *)param)->receiver_full = true;
}

static avr_cycle_count_t pump_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct chip *chip = param;
    uint8_t byte;
    chip->uart->cycles_per_byte = cycles_per_byte(chip);
    if (chip->receiver_full)
        return when + chip->uart->cycles_per_byte;
    if (!chip->surroundings->next_byte(chip, &byte)) {
        chip->pump_running = false;
        return 0;
    }
    /* On the wire one, in the chip's buffer two: a fourth byte not yet read would have been lost there. */
    uint16_t unread = (uint16_t)((chip->uart->input.write - chip->uart->input.read) & (uart_fifo_fifo_size - 1));
    if (unread > 3)
        chip->receive_overruns++;
    avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), byte);
    return when + chip->uart->cycles_per_byte;
}

void serial_pump_receiver(struct chip *chip)
{
    if (chip->pump_running)
        return;
    chip->pump_running = true;
    avr_cycle_timer_register(chip->avr, 1, pump_timer, chip);
}

void serial_listen(struct chip *chip)
{
    avr_t *avr = chip->avr;
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), byte_sent, chip);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XON), receiver_xon, chip);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XOFF), receiver_xoff, chip);
    uint32_t no_flags = 0; /* neither a host sleep at every poll nor bytes printed as text */
    avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &no_flags);
}
