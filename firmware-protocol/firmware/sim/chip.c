#include "chip.h"

#include <stdarg.h>
#include <stddef.h>
#include <sim_elf.h>
#include <sim_time.h>
#include <stdio.h>
#include <string.h>

#include <avr_acomp.h>
#include <avr_extint.h>
#include <avr_ioport.h>

#include "converter.h"
#include "serial.h"

/* Register addresses of the ATmega328P (data sheet, register summary). */
enum { REG_PINB = 0x23, REG_DDRB = 0x24, REG_PORTB = 0x25, REG_PIND = 0x29, REG_DDRD = 0x2A, REG_PORTD = 0x2B, REG_SPMCSR = 0x57 };
enum { ENTRY_CYCLES = 4, WAKE_CYCLES = 4 };
enum { RAM_START = 0x100 };

double chip_seconds(uint64_t cycle)
{
    return (double)cycle / CHIP_HZ;
}

/* ---- pins ---- */

bool chip_pin_driven(const struct chip *chip, char port, uint8_t bit)
{
    return (chip->avr->data[port == 'B' ? REG_DDRB : REG_DDRD] & 1 << bit) != 0;
}

bool chip_pin_high(const struct chip *chip, char port, uint8_t bit)
{
    return chip_pin_driven(chip, port, bit) && (chip->avr->data[port == 'B' ? REG_PORTB : REG_PORTD] & 1 << bit) != 0;
}

void chip_drive(struct chip *chip, char port, uint8_t bit, bool level)
{
    avr_irq_t *irq = avr_io_getirq(chip->avr, AVR_IOCTL_IOPORT_GETIRQ(port), bit);
    /* The simulator skips a level it believes unchanged; after a reset its register is 0 whatever it believes. */
    avr_raise_irq(irq, !level);
    avr_raise_irq(irq, level);
}

/* Without this the simulator lets an internal pull-up win over the level that the board drives. */
void chip_declare_driven(struct chip *chip, char port, uint8_t mask, uint8_t levels)
{
    avr_ioport_external_t external = {.name = (unsigned long)port & 0x7F, .mask = mask, .value = levels};
    avr_ioctl(chip->avr, (uint32_t)AVR_IOCTL_IOPORT_SET_EXTERNAL(port), &external);
}

void chip_compare(struct chip *chip, uint32_t plus_mv, uint32_t minus_mv)
{
    avr_raise_irq(avr_io_getirq(chip->avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN1), minus_mv);
    avr_raise_irq(avr_io_getirq(chip->avr, AVR_IOCTL_ACOMP_GETIRQ, ACOMP_IRQ_AIN0), plus_mv);
}

static void port_written(avr_irq_t *irq, uint32_t value, void *param)
{
    struct chip *chip = param;
    (void)irq;
    (void)value;
    chip->surroundings->ports_changed(chip);
}

/* ---- fuses ---- */

/*
 * With BLBSET and SPMEN set, a read of program memory within three cycles gives a fuse or the lock byte. The simulator
 * gives the program; so for those cycles its first bytes, from which nothing is executed then, are the fuses.
 */
enum { SPMCSR_BLBSET_SPMEN = 0x09, FUSE_READ_CYCLES = 6 };

static avr_cycle_count_t fuse_read_over(avr_t *avr, avr_cycle_count_t when, void *param)
{
    struct chip *chip = param;
    (void)when;
    memcpy(avr->flash, chip->hidden, sizeof chip->hidden);
    return 0;
}

static void fuse_read_begins(avr_irq_t *irq, uint32_t value, void *param)
{
    struct chip *chip = param;
    (void)irq;
    if ((value & SPMCSR_BLBSET_SPMEN) != SPMCSR_BLBSET_SPMEN)
        return;
    const uint8_t by_address[4] = {chip->fuses[0], 0xFF, chip->fuses[2], chip->fuses[1]}; /* low, lock, extended, high */
    memcpy(chip->hidden, chip->avr->flash, sizeof chip->hidden);
    memcpy(chip->avr->flash, by_address, sizeof by_address);
    avr_cycle_timer_register(chip->avr, FUSE_READ_CYCLES, fuse_read_over, chip);
}

/* ---- time of interrupts ---- */

/* The chip takes 4 cycles to enter a handler and 4 more out of sleep; the simulator takes none. */
static void vector_running(avr_irq_t *irq, uint32_t value, void *param)
{
    struct chip *chip = param;
    if (value == 0)
        return;
    avr_t *avr = chip->avr;
    chip->entered_cycle[irq->irq] = avr->cycle;
    uint64_t cycles = ENTRY_CYCLES + (chip->waking ? WAKE_CYCLES : 0);
    chip->interrupts++;
    chip->waking = false;
    avr->cycle += cycles;
}

static void listen_to_vectors(struct chip *chip)
{
    for (int v = 1; v < CHIP_VECTORS; v++) {
        avr_irq_t *irq = avr_get_interrupt_irq(chip->avr, (uint8_t)v);
        if (irq == NULL)
            continue;
        irq[AVR_INT_IRQ_RUNNING].irq = (uint32_t)v;
        avr_irq_register_notify(&irq[AVR_INT_IRQ_RUNNING], vector_running, chip);
    }
}

/* ---- start, reset, steps ---- */

static void chip_was_reset(avr_io_t *io)
{
    struct chip *chip = (struct chip *)((char *)io - offsetof(struct chip, reset_watch));
    chip->was_reset = true;
}

static void *find_module(avr_t *avr, const char *kind)
{
    avr_io_t *io = avr->io_port;
    while (io != NULL && strcmp(io->kind, kind) != 0)
        io = io->next;
    return io; /* every module begins with its avr_io_t */
}

static void listen(struct chip *chip)
{
    avr_t *avr = chip->avr;
    converter_listen(chip);
    serial_listen(chip);
    static const avr_io_addr_t WATCHED[] = {REG_PINB, REG_DDRB, REG_PORTB, REG_PIND, REG_DDRD, REG_PORTD};
    for (size_t i = 0; i < sizeof WATCHED / sizeof WATCHED[0]; i++)
        avr_irq_register_notify(avr_iomem_getirq(avr, WATCHED[i], NULL, AVR_IOMEM_IRQ_ALL), port_written, chip);
    avr_irq_register_notify(avr_iomem_getirq(avr, REG_SPMCSR, NULL, AVR_IOMEM_IRQ_ALL), fuse_read_begins, chip);
    listen_to_vectors(chip);
}

/* Real time is kept by the program's own loop; a sleep here would add to it. */
static void asleep(avr_t *avr, avr_cycle_count_t cycles)
{
    struct chip *chip = avr->custom.data;
    chip->waking = true;
    chip->asleep_cycles += cycles + 1; /* the simulator adds one itself */
}

/* To standard error, for standard output is the caller's; a fuse that is read is no program memory that was forgotten. */
static void say(avr_t *avr, const int level, const char *format, va_list values)
{
    (void)avr;
    if (level <= LOG_ERROR && strncmp(format, "FLASH: %s - SPM not received", 24) != 0)
        vfprintf(stderr, format, values);
}

bool chip_init(struct chip *chip, const char *elf_path, const struct chip_surroundings *surroundings, struct failure *failure)
{
    avr_global_logger_set(say);
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
    firmware.frequency = CHIP_HZ;
    avr_load_firmware(avr, &firmware);
    avr->frequency = CHIP_HZ;
    avr->vcc = avr->avcc = CHIP_VCC_MV;
    avr->aref = CHIP_AREF_MV;
    avr->sleep = asleep;
    avr->custom.data = chip;
    chip->avr = avr;
    chip->surroundings = surroundings;
    chip->data_end = (uint16_t)(RAM_START + firmware.datasize + firmware.bsssize);
    chip->adc = find_module(avr, "adc");
    chip->uart = find_module(avr, "uart");
    chip->eeprom = find_module(avr, "eeprom");
    if (chip->adc == NULL || chip->uart == NULL || chip->eeprom == NULL)
        return fail(failure, "the simulated chip lacks converter, serial line or EEPROM; expected libsimavr 1.6");
    static const uint8_t FUSES[3] = {0xFF, 0xC7, 0xFC}; /* as the guide says */
    memcpy(chip->fuses, FUSES, sizeof FUSES);
    chip->reset_watch = (avr_io_t){.kind = "reset watch", .reset = chip_was_reset};
    avr_register_io(avr, &chip->reset_watch);
    listen(chip);
    return true;
}

static void set_cause(struct chip *chip, enum reset_kind kind)
{
    avr_t *avr = chip->avr;
    avr_regbit_t flag = kind == RESET_POWER_ON ? avr->reset_flags.porf
                        : kind == RESET_EXTERNAL ? avr->reset_flags.extrf : avr->reset_flags.borf;
    avr_regbit_set(avr, flag);
}

static void after_reset(struct chip *chip)
{
    chip->was_reset = false;
    chip->waking = false;
    chip->receiver_full = false;
    chip->pump_running = false;
    /* Else the simulator polls the switch and look pins every cycle while they are low (and every reset asks for that again), at a fifth of the speed. */
    for (uint8_t i = 0; i < 2; i++)
        avr_extint_set_strict_lvl_trig(chip->avr, i, 0);
    chip->surroundings->after_reset(chip);
}

void chip_power_on(struct chip *chip)
{
    avr_reset(chip->avr);
    set_cause(chip, RESET_POWER_ON);
    after_reset(chip);
}

void chip_reset(struct chip *chip, enum reset_kind kind)
{
    chip->resets++;
    avr_reset(chip->avr);
    set_cause(chip, kind);
    after_reset(chip);
}

static avr_cycle_count_t wake(avr_t *avr, avr_cycle_count_t when, void *param)
{
    (void)avr;
    (void)when;
    (void)param;
    return 0;
}

void chip_wake_at(struct chip *chip, uint64_t cycle)
{
    avr_t *avr = chip->avr;
    avr_cycle_timer_cancel(avr, wake, chip);
    if (cycle > avr->cycle)
        avr_cycle_timer_register(avr, cycle - avr->cycle, wake, chip);
}

bool chip_step(struct chip *chip)
{
    int state = avr_run(chip->avr);
    if (chip->was_reset) { /* by the chip's own watchdog */
        chip->resets++;
        after_reset(chip);
    }
    return state != cpu_Done && state != cpu_Crashed;
}

void chip_hang(struct chip *chip)
{
    avr_t *avr = chip->avr;
    uint32_t last = avr->flashend - 1;
    avr->flash[last] = 0xFF; /* rjmp to itself (opcode 0xCFFF), in a place the program does not use */
    avr->flash[last + 1] = 0xCF;
    avr->pc = last;
    avr->state = cpu_Running;
}
