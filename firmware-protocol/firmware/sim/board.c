#include "board.h"

#include <math.h>
#include <stddef.h>
#include <sim_elf.h>
#include <sim_time.h>
#include <string.h>

#include <avr_acomp.h>
#include <avr_extint.h>
#include <avr_ioport.h>

/* Register addresses of the ATmega328P (data sheet, register summary). */
enum { REG_PINB = 0x23, REG_DDRB = 0x24, REG_PORTB = 0x25, REG_PIND = 0x29, REG_DDRD = 0x2A, REG_PORTD = 0x2B, REG_ACSR = 0x50, REG_TCCR1B = 0x81,
       REG_ADCSRA = 0x7A, REG_UCSRA = 0xC0, REG_UBRRL = 0xC4, REG_UBRRH = 0xC5 };
enum { ENTRY_CYCLES = 4, WAKE_CYCLES = 4 };
enum { RAM_START = 0x100, BIT_SWITCH = 2, BIT_LOOK = 3, BIT_U2X = 1, BIT_ACIC = 2, BIT_ICES1 = 6 };

static const double HARD_SHORT_FULL_A = 12.5; /* gives 4.096 V at the comparator */

/* Where each digital input sits and the level it has when it is true. */
static const struct {
    char port;
    uint8_t bit;
    bool high_when_true;
} PIN_OF[INPUTS] = {
    [INPUT_CHASSIS_CLIP] = {'B', 2, false}, [INPUT_SUPPLY_PRESENT] = {'B', 0, true},
    [INPUT_SUPPLY_REVERSED] = {'B', 1, true}, [INPUT_BUTTON] = {'D', 4, false},
    [INPUT_PEDAL] = {'D', 5, false}, [INPUT_ISOLATED_LINK] = {'B', 5, false},
};

double board_seconds(uint64_t cycle)
{
    return (double)cycle / BOARD_HZ;
}

static uint64_t cycles_of(double seconds)
{
    return (uint64_t)ceil(seconds * BOARD_HZ - 1e-6);
}

/* ---- inputs ---- */

static void drive_pin(struct board *board, enum digital_input input)
{
    char port = PIN_OF[input].port;
    uint8_t bit = PIN_OF[input].bit;
    uint32_t level = board->frontend->input[input] == PIN_OF[input].high_when_true;
    avr_irq_t *irq = avr_io_getirq(board->avr, AVR_IOCTL_IOPORT_GETIRQ(port), bit);
    /* The simulator skips a level it believes unchanged; after a reset its register is 0 whatever it believes. */
    avr_raise_irq(irq, !level);
    avr_raise_irq(irq, level);
}

/* Without this the simulator lets an internal pull-up win over the level that the board drives. */
static void declare_driven_pins(struct board *board)
{
    for (char port = 'B'; port <= 'D'; port += 2) {
        avr_ioport_external_t external = {.name = (unsigned long)port & 0x7F};
        for (int i = 0; i < INPUTS; i++) {
            if (PIN_OF[i].port != port)
                continue;
            external.mask |= 1u << PIN_OF[i].bit;
            if (board->frontend->input[i] == PIN_OF[i].high_when_true)
                external.value |= 1u << PIN_OF[i].bit;
        }
        avr_ioctl(board->avr, (uint32_t)AVR_IOCTL_IOPORT_SET_EXTERNAL(port), &external);
    }
}

static uint32_t comparator_mv(double amperes)
{
    return (uint32_t)lround(amperes / HARD_SHORT_FULL_A * BOARD_AREF_MV);
}

/* The comparator only compares: a level of whole millivolts must not move the moment at which the current passes. */
static void drive_comparator(struct board *board)
{
    uint32_t level_mv = comparator_mv(board->frontend->hard_short_a);
    avr_irq_t *plus = avr_io_getirq(board->avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN0);
    avr_irq_t *minus = avr_io_getirq(board->avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN1);
    avr_raise_irq(minus, level_mv);
    avr_raise_irq(plus, board->hard_short.above ? level_mv + 1 : 0);
    /* With ACIC the comparator is the input of timer 1's capture; the simulator has the bit, but not the wire. */
    bool captures = board->avr->data[REG_ACSR] & 1 << BIT_ACIC && board->avr->data[REG_TCCR1B] & 1 << BIT_ICES1;
    if (captures && board->hard_short.above && !board->comparator_high)
        avr_raise_interrupt(board->avr, &board->timer1->icr);
    board->comparator_high = board->hard_short.above;
}

/* ---- crossings of the waveform, at their exact time ---- */

static avr_cycle_count_t crossing_timer(avr_t *avr, avr_cycle_count_t when, void *param);

static void crossing_flip(struct crossing *crossing, uint64_t cycle)
{
    struct board *board = crossing->board;
    crossing->above = !crossing->above;
    if (crossing == &board->hard_short) {
        drive_comparator(board);
    } else if (crossing->above) {
        board->crossed_cycle = cycle;
        events_crossed(board->events, cycle, crossing->column);
    }
}

/* Absolute cycle of the next passing, 0 when there is none. */
static uint64_t crossing_next(const struct crossing *crossing, uint64_t from_cycle)
{
    const struct board *board = crossing->board;
    int sign = crossing->level < 0 ? -1 : 1;
    double t_s = waveform_next_crossing(board->wave, crossing->column, crossing->level, sign, crossing->above,
                                        board_seconds(from_cycle - board->closed_cycle));
    return t_s < 0 ? 0 : board->closed_cycle + cycles_of(t_s);
}

static void crossing_arm(struct crossing *crossing, uint64_t from_cycle)
{
    avr_t *avr = crossing->board->avr;
    uint64_t next = crossing_next(crossing, from_cycle);
    avr_cycle_timer_cancel(avr, crossing_timer, crossing);
    if (next != 0)
        avr_cycle_timer_register(avr, next > avr->cycle ? next - avr->cycle : 0, crossing_timer, crossing);
}

static avr_cycle_count_t crossing_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct crossing *crossing = param;
    (void)avr;
    crossing_flip(crossing, when);
    uint64_t next = crossing_next(crossing, when);
    if (next == 0)
        return 0;
    return next > when ? next : when + 1;
}

static void crossing_start(struct crossing *crossing)
{
    struct board *board = crossing->board;
    if (board->wave->value[crossing->column] == NULL)
        return;
    int sign = crossing->level < 0 ? -1 : 1;
    double first = waveform_at(board->wave, crossing->column, 0);
    if (sign * (first - crossing->level) > 0)
        crossing_flip(crossing, board->closed_cycle);
    crossing_arm(crossing, board->closed_cycle);
}

static void crossing_stop(struct crossing *crossing)
{
    avr_cycle_timer_cancel(crossing->board->avr, crossing_timer, crossing);
    if (crossing->above && crossing == &crossing->board->hard_short)
        crossing_flip(crossing, 0);
    crossing->above = false;
}

/* ---- switch and look path ---- */

static enum supply_state supply_of_pins(const struct board *board)
{
    /* A pin that is not an output floats; the pull-down on the board makes it low. */
    uint8_t driven_high = board->avr->data[REG_PORTD] & board->avr->data[REG_DDRD];
    if (driven_high & 1 << BIT_SWITCH)
        return SUPPLY_ON;
    return driven_high & 1 << BIT_LOOK ? SUPPLY_LOOK : SUPPLY_OFF;
}

static void supply_watch(struct board *board)
{
    enum supply_state state = supply_of_pins(board);
    if (state == board->supply)
        return;
    uint64_t cycle = board->avr->cycle;
    bool was_on = board->supply == SUPPLY_ON;
    board->supply = state;
    set_model_change(&board->set, state, board_seconds(cycle));
    events_supply(board->events, cycle, state);
    if (state == SUPPLY_ON) {
        board->closed_cycle = cycle;
        board->crossed_cycle = 0;
        crossing_start(&board->hard_short);
        for (size_t i = 0; i < board->crossings; i++)
            crossing_start(&board->crossing[i]);
    } else if (was_on) {
        board->opened_cycle = cycle;
        if (board->crossed_cycle != 0 && cycle - board->crossed_cycle > board->longest_reaction_cycles)
            board->longest_reaction_cycles = cycle - board->crossed_cycle;
        crossing_stop(&board->hard_short);
        for (size_t i = 0; i < board->crossings; i++)
            crossing_stop(&board->crossing[i]);
    }
}

static void port_written(avr_irq_t *irq, uint32_t value, void *param)
{
    (void)irq;
    (void)value;
    supply_watch(param);
}

/* ---- converter ---- */

/* Millivolts which the simulator's truncating mV * 1023 / AREF turns into exactly these counts. */
static uint32_t mv_for_counts(uint16_t counts)
{
    return ((uint32_t)counts * BOARD_AREF_MV + HIGHEST_COUNT - 1) / HIGHEST_COUNT;
}

static void sample(struct board *board, uint64_t cycle)
{
    uint8_t channel = board->conversion.channel;
    double value = set_model_value(&board->set, (enum channel)channel, board_seconds(cycle));
    board->conversion.counts = frontend_counts(&board->frontend->scale[channel], value, noise_next(&board->noise));
    fed_conversion(&board->fed, board->conversion.start_cycle, channel, board->conversion.counts);
}

/*
 * The chip latches its input 1.5 converter clocks after the start and shows the result at the end. The simulator
 * takes level and channel when the result is read; so all its inputs get the latched value just before the end.
 */
static avr_cycle_count_t conversion_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct board *board = param;
    if (!board->conversion.sampled) {
        sample(board, when);
        board->conversion.sampled = true;
        uint32_t clocks = board->conversion.first ? 25 : 13;
        return board->conversion.start_cycle + clocks * board->conversion.clock_cycles - 2;
    }
    avr_irq_t *inputs = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0);
    for (int c = 0; c < CHANNELS; c++)
        avr_raise_irq(inputs + c, mv_for_counts(board->conversion.counts));
    return 0;
}

static void conversion_started(avr_irq_t *irq, uint32_t value, void *param)
{
    struct board *board = param;
    (void)irq;
    union {
        uint32_t value;
        avr_adc_mux_t mux;
    } trigger = {.value = value};
    avr_cycle_timer_cancel(board->avr, conversion_timer, board);
    if (trigger.mux.kind != ADC_MUX_SINGLE || trigger.mux.src >= CHANNELS)
        return;
    uint8_t prescaler = board->avr->data[REG_ADCSRA] & 7;
    board->conversion.start_cycle = board->avr->cycle;
    board->conversion.channel = (uint8_t)trigger.mux.src;
    board->conversion.clock_cycles = prescaler == 0 ? 2 : 1u << prescaler;
    board->conversion.first = board->adc->first != 0;
    board->conversion.sampled = false;
    uint32_t half_clocks = board->conversion.first ? 27 : 3;
    avr_cycle_timer_register(board->avr, half_clocks * board->conversion.clock_cycles / 2, conversion_timer, board);
}

/* ---- serial line ---- */

/* The simulator counts a parity bit that is not there: 11 bit times a byte. The chip's 8N1 takes 10. */
static uint32_t cycles_per_byte(const struct board *board)
{
    const uint8_t *data = board->avr->data;
    uint32_t divisor = (uint32_t)(data[REG_UBRRL] | (data[REG_UBRRH] & 0x0F) << 8) + 1;
    return divisor * (data[REG_UCSRA] & 1 << BIT_U2X ? 8 : 16) * 10;
}

static void byte_sent(avr_irq_t *irq, uint32_t value, void *param)
{
    struct board *board = param;
    (void)irq;
    struct wire_frame frame;
    uint8_t byte = (uint8_t)value;
    board->uart->cycles_per_byte = cycles_per_byte(board);
    bridge_put(board->bridge, byte);
    if (!wire_receive(&board->from_probe, byte, &frame))
        return;
    fed_compare(&board->fed, &frame);
    enum stream_change change = stream_probe_frame(&board->stream, &frame);
    if (change == STREAM_STARTED)
        board->bridge->bytes_lost = 0;
    if (change == STREAM_STOPPED)
        events_sent(board->events, board->stream.conversions_sent, board->bridge->bytes_lost);
}

static void receiver_xon(avr_irq_t *irq, uint32_t value, void *param)
{
    (void)irq;
    (void)value;
    ((struct board *)param)->receiver_full = false;
}

static void receiver_xoff(avr_irq_t *irq, uint32_t value, void *param)
{
    (void)irq;
    if (value != 0)
        ((struct board *)param)->receiver_full = true;
}

static avr_cycle_count_t pump_timer(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct board *board = param;
    uint8_t byte;
    board->uart->cycles_per_byte = cycles_per_byte(board);
    if (board->receiver_full)
        return when + board->uart->cycles_per_byte;
    if (!bridge_get(board->bridge, &byte)) {
        board->pump_running = false;
        return 0;
    }
    /* On the wire one, in the chip's buffer two: a fourth byte not yet read would have been lost there. */
    uint16_t unread = (uint16_t)((board->uart->input.write - board->uart->input.read) & (uart_fifo_fifo_size - 1));
    if (unread > 3)
        board->receive_overruns++;
    stream_host_byte(&board->stream, byte);
    avr_raise_irq(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_INPUT), byte);
    return when + board->uart->cycles_per_byte;
}

void board_pump_receiver(struct board *board)
{
    if (board->pump_running || board->bridge->from_host.count == 0)
        return;
    board->pump_running = true;
    avr_cycle_timer_register(board->avr, 1, pump_timer, board);
}

/* ---- time of interrupts ---- */

/* The chip takes 4 cycles to enter a handler and 4 more out of sleep; the simulator takes none. */
static void vector_running(avr_irq_t *irq, uint32_t value, void *param)
{
    struct board *board = param;
    if (value == 0)
        return;
    avr_t *avr = board->avr;
    board->entered_cycle[irq->irq] = avr->cycle;
    uint64_t cycles = ENTRY_CYCLES + (board->waking ? WAKE_CYCLES : 0);
    board->interrupts++;
    board->waking = false;
    avr->cycle += cycles;
}

static void listen_to_vectors(struct board *board)
{
    for (int v = 1; v < VECTORS; v++) {
        avr_irq_t *irq = avr_get_interrupt_irq(board->avr, (uint8_t)v);
        if (irq == NULL)
            continue;
        irq[AVR_INT_IRQ_RUNNING].irq = (uint32_t)v;
        avr_irq_register_notify(&irq[AVR_INT_IRQ_RUNNING], vector_running, board);
    }
}

/* ---- start, reset, steps ---- */

static void chip_was_reset(avr_io_t *io)
{
    struct board *board = (struct board *)((char *)io - offsetof(struct board, reset_watch));
    board->was_reset = true;
}

static void *find_module(avr_t *avr, const char *kind)
{
    avr_io_t *io = avr->io_port;
    while (io != NULL && strcmp(io->kind, kind) != 0)
        io = io->next;
    return io; /* every module begins with its avr_io_t */
}

static avr_timer_t *find_timer(avr_t *avr, char name)
{
    for (avr_io_t *io = avr->io_port; io != NULL; io = io->next)
        if (strcmp(io->kind, "timer") == 0 && ((avr_timer_t *)io)->name == name)
            return (avr_timer_t *)io;
    return NULL;
}

static void listen(struct board *board)
{
    avr_t *avr = board->avr;
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER), conversion_started, board);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT), byte_sent, board);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XON), receiver_xon, board);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUT_XOFF), receiver_xoff, board);
    static const avr_io_addr_t WATCHED[] = {REG_PIND, REG_DDRD, REG_PORTD};
    for (size_t i = 0; i < sizeof WATCHED / sizeof WATCHED[0]; i++)
        avr_irq_register_notify(avr_iomem_getirq(avr, WATCHED[i], NULL, AVR_IOMEM_IRQ_ALL), port_written, board);
    listen_to_vectors(board);
    uint32_t no_flags = 0; /* neither a host sleep at every poll nor bytes printed as text */
    avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &no_flags);
}

/* Real time is kept by the program's own loop; a sleep here would add to it. */
static void asleep(avr_t *avr, avr_cycle_count_t cycles)
{
    struct board *board = avr->custom.data;
    board->waking = true;
    board->asleep_cycles += cycles + 1; /* the simulator adds one itself */
}

bool board_init(struct board *board, const char *elf_path, struct failure *failure)
{
    elf_firmware_t firmware;
    memset(&firmware, 0, sizeof firmware);
    FILE *readable = fopen(elf_path, "rb");
    if (readable == NULL)
        return fail(failure, "%s: cannot be opened; expected the firmware (probe.elf)", elf_path);
    fclose(readable);
    if (elf_read_firmware(elf_path, &firmware) != 0 || firmware.flashsize == 0)
        return fail(failure, "%s: no AVR program in it; expected the firmware (probe.elf)", elf_path);
    avr_t *avr = avr_make_mcu_by_name("atmega328p");
    if (avr == NULL)
        return fail(failure, "the simulator does not know the atmega328p; expected libsimavr 1.6");
    avr_init(avr);
    firmware.frequency = BOARD_HZ;
    avr_load_firmware(avr, &firmware);
    avr->frequency = BOARD_HZ;
    avr->vcc = avr->avcc = BOARD_VCC_MV;
    avr->aref = BOARD_AREF_MV;
    avr->sleep = asleep;
    avr->custom.data = board;
    board->avr = avr;
    board->data_end = (uint16_t)(RAM_START + firmware.datasize + firmware.bsssize);
    board->adc = find_module(avr, "adc");
    board->uart = find_module(avr, "uart");
    board->eeprom = find_module(avr, "eeprom");
    if (board->adc == NULL || board->uart == NULL || board->eeprom == NULL)
        return fail(failure, "the simulated chip lacks converter, serial line or EEPROM; expected libsimavr 1.6");
    board->timer1 = find_timer(avr, '1');
    if (board->timer1 == NULL)
        return fail(failure, "the simulated chip lacks timer 1; expected libsimavr 1.6");
    board->reset_watch = (avr_io_t){.kind = "reset watch", .reset = chip_was_reset};
    avr_register_io(avr, &board->reset_watch);
    listen(board);
    return true;
}

static void set_cause(struct board *board, enum reset_kind kind)
{
    avr_t *avr = board->avr;
    avr_regbit_t flag = kind == RESET_POWER_ON ? avr->reset_flags.porf
                        : kind == RESET_EXTERNAL ? avr->reset_flags.extrf : avr->reset_flags.borf;
    avr_regbit_set(avr, flag);
}

static void after_reset(struct board *board)
{
    board->was_reset = false;
    board->waking = false;
    board->receiver_full = false;
    board->pump_running = false;
    fed_restart(&board->fed);
    /* Else the simulator polls the switch and look pins every cycle while they are low (and every reset asks for that again), at a fifth of the speed. */
    for (uint8_t i = 0; i < 2; i++)
        avr_extint_set_strict_lvl_trig(board->avr, i, 0);
    supply_watch(board);
    declare_driven_pins(board);
    for (int i = 0; i < INPUTS; i++)
        drive_pin(board, (enum digital_input)i);
    drive_comparator(board);
}

void board_power_on(struct board *board)
{
    set_model_init(&board->set, board->wave, board->frontend);
    board->hard_short = (struct crossing){WAVE_SUPPLY_A, board->frontend->hard_short_a, false, board};
    for (size_t i = 0; i < board->crossings; i++)
        board->crossing[i].board = board;
    avr_reset(board->avr);
    set_cause(board, RESET_POWER_ON);
    after_reset(board);
}

void board_reset(struct board *board, enum reset_kind kind)
{
    board->resets++;
    avr_reset(board->avr);
    set_cause(board, kind);
    after_reset(board);
}

static void apply_change(struct board *board, const struct input_change *change)
{
    if (!change->is_hard_short) {
        board->frontend->input[change->input] = change->level;
        declare_driven_pins(board);
        drive_pin(board, change->input);
        return;
    }
    board->frontend->hard_short_a = change->hard_short_a;
    board->hard_short.level = change->hard_short_a;
    if (board->supply == SUPPLY_ON && board->wave->value[WAVE_SUPPLY_A] != NULL) {
        double amperes = set_model_value(&board->set, CHANNEL_I, board_seconds(board->avr->cycle));
        board->hard_short.above = amperes > change->hard_short_a;
        crossing_arm(&board->hard_short, board->avr->cycle);
    }
    drive_comparator(board);
}

uint64_t board_next_change(const struct board *board)
{
    if (board->next_change == board->frontend->changes)
        return UINT64_MAX;
    return (uint64_t)(board->frontend->change[board->next_change].at_ms * (BOARD_HZ / 1000));
}

bool board_step(struct board *board)
{
    int state = avr_run(board->avr);
    if (board->was_reset) { /* by the chip's own watchdog */
        board->resets++;
        after_reset(board);
    }
    supply_watch(board); /* a reset or a stray write drops the pin without an event */
    while (board_next_change(board) <= board->avr->cycle)
        apply_change(board, &board->frontend->change[board->next_change++]);
    return state != cpu_Done && state != cpu_Crashed;
}

void board_hang(struct board *board)
{
    avr_t *avr = board->avr;
    uint32_t last = avr->flashend - 1;
    avr->flash[last] = 0xFF; /* rjmp to itself (opcode 0xCFFF), in a place the program does not use */
    avr->flash[last + 1] = 0xCF;
    avr->pc = last;
    avr->state = cpu_Running;
}
