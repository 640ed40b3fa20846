#include "converter.h"

/* Register address of the ATmega328P (data sheet, register summary). */
enum { REG_ADCSRA = 0x7A };
enum { HIGHEST_COUNT = 1023 };

/* Millivolts which the simulator's truncating mV * 1023 / AREF turns into exactly these counts. */
static uint32_t mv_for_counts(uint16_t counts)
{
    return ((uint32_t)counts * CHIP_AREF_MV + HIGHEST_COUNT - 1) / HIGHEST_COUNT;
}

/*
 * The chip latches its input 1.5 converter clocks after the start and shows the result at the end. The simulator
 * takes level and channel when the result is read; so all its inputs get the latched value just before the end.
 */
static avr_cycle_count_t conversion_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct chip *chip = param;
    if (!chip->conversion.sampled) {
        chip->conversion.counts = chip->surroundings->counts(chip, chip->conversion.channel, when);
        chip->conversion.sampled = true;
        uint32_t clocks = chip->conversion.first ? 25 : 13;
        return chip->conversion.start_cycle + clocks * chip->conversion.clock_cycles - 2;
    }
    avr_irq_t *inputs = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0);
    for (int c = 0; c < CHIP_CONVERTER_INPUTS; c++)
        avr_raise_irq(inputs + c, mv_for_counts(chip->conversion.counts));
    return 0;
}

static void conversion_started(avr_irq_t *irq, uint32_t value, void *param)
{
    struct chip *chip = param;
    (void)irq;
    union {
        uint32_t value;
        avr_adc_mux_t mux;
    } trigger = {.value = value};
    avr_cycle_timer_cancel(chip->avr, conversion_timer, chip);
    if (trigger.mux.kind != ADC_MUX_SINGLE || trigger.mux.src >= CHIP_CONVERTER_INPUTS)
        return;
    uint8_t prescaler = chip->avr->data[REG_ADCSRA] & 7;
    chip->conversion.start_cycle = chip->avr->cycle;
    chip->conversion.channel = (uint8_t)trigger.mux.src;
    chip->conversion.clock_cycles = prescaler == 0 ? 2 : 1u << prescaler;
    chip->conversion.first = chip->adc->first != 0;
    chip->conversion.sampled = false;
    uint32_t half_clocks = chip->conversion.first ? 27 : 3;
    avr_cycle_timer_register(chip->avr, half_clocks * chip->conversion.clock_cycles / 2, conversion_timer, chip);
}

void converter_listen(struct chip *chip)
{
    avr_irq_register_notify(avr_io_getirq(chip->avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER), conversion_started, chip);
}
