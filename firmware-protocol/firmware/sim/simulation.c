#include "simulation.h"

#include <signal.h>
#include <time.h>

enum { SLICE_CYCLES = CHIP_HZ / 2000, LATEST_NS = 2000000000, SLICE_NS = 500000, NS_PER_S = 1000000000, FLAT_OUT_BACKLOG = QUEUE_BYTES / 4,
       CLIENT_PATIENCE_MS = 200 };

static volatile sig_atomic_t end_asked;

void simulation_ask_end(int signal_number)
{
    (void)signal_number;
    end_asked = 1;
}

bool simulation_end_asked(void)
{
    return end_asked != 0;
}

static uint64_t now_ns(void)
{
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (uint64_t)now.tv_sec * NS_PER_S + (uint64_t)now.tv_nsec;
}

static void sleep_until_ns(uint64_t deadline_ns)
{
    struct timespec deadline = {(time_t)(deadline_ns / NS_PER_S), (long)(deadline_ns % NS_PER_S)};
    clock_nanosleep(CLOCK_MONOTONIC, TIMER_ABSTIME, &deadline, NULL);
}

static uint64_t cycle_of_ms(double ms)
{
    return (uint64_t)(ms * (CHIP_HZ / 1000));
}

static uint64_t after_origin(const struct simulation *simulation, double ms)
{
    return simulation->origin == UINT64_MAX ? UINT64_MAX : simulation->origin + cycle_of_ms(ms);
}

static uint64_t next_moment(const struct simulation *simulation, const struct moments *moments, size_t next)
{
    return next < moments->count ? after_origin(simulation, moments->at_ms[next]) : UINT64_MAX;
}

static uint64_t earlier(uint64_t a, uint64_t b)
{
    return a < b ? a : b;
}

/* A hang can begin only where the main program runs; inside a handler it waits for the next step. */
static bool in_main_program(const avr_t *avr)
{
    return avr->interrupts.running_ptr == 0 && avr->sreg[S_I] != 0;
}

static void inject(struct simulation *simulation)
{
    struct options *options = &simulation->options;
    struct board *board = &simulation->board;
    uint64_t cycle = board->chip.avr->cycle;
    if (next_moment(simulation, &options->reset, simulation->next_reset) <= cycle) {
        simulation->next_reset++;
        events_fault(&simulation->events, cycle, "reset");
        chip_reset(&board->chip, RESET_EXTERNAL);
    }
    if (next_moment(simulation, &options->brown_out, simulation->next_brown_out) <= cycle) {
        simulation->next_brown_out++;
        events_fault(&simulation->events, cycle, "brownout");
        chip_reset(&board->chip, RESET_BROWN_OUT);
    }
    if (next_moment(simulation, &options->hang, simulation->next_hang) <= cycle && in_main_program(board->chip.avr)) {
        simulation->next_hang++;
        events_fault(&simulation->events, cycle, "hang");
        chip_hang(&board->chip);
    }
}

static bool step(struct simulation *simulation)
{
    struct measure *measure = &simulation->measure;
    if (!measure->on)
        return board_step(&simulation->board);
    measure_before_step(measure);
    bool running = board_step(&simulation->board);
    measure_after_step(measure);
    return running;
}

/* Runs to the given cycle, stopping exactly where something is to be changed. */
static bool run_to(struct simulation *simulation, uint64_t target)
{
    avr_t *avr = simulation->board.chip.avr;
    const struct options *options = &simulation->options;
    while (avr->cycle < target) {
        uint64_t stop = earlier(target, board_next_change(&simulation->board));
        stop = earlier(stop, next_moment(simulation, &options->reset, simulation->next_reset));
        stop = earlier(stop, next_moment(simulation, &options->brown_out, simulation->next_brown_out));
        stop = earlier(stop, next_moment(simulation, &options->hang, simulation->next_hang));
        chip_wake_at(&simulation->board.chip, stop);
        do {
            if (!step(simulation))
                return false;
        } while (avr->cycle < stop);
        inject(simulation);
    }
    return true;
}

static void let_client_catch_up(struct simulation *simulation, double now_ms)
{
    size_t before = simulation->bridge.to_host.count;
    if (before < FLAT_OUT_BACKLOG) {
        simulation->client_gone = false;
        return;
    }
    if (simulation->client_gone)
        return;
    bridge_wait_for_client(&simulation->bridge, CLIENT_PATIENCE_MS);
    bridge_move(&simulation->bridge, now_ms);
    simulation->client_gone = simulation->bridge.to_host.count == before;
}

bool simulation_run(struct simulation *simulation)
{
    avr_t *avr = simulation->board.chip.avr;
    double ns_per_cycle = 62.5 / (1 + simulation->frontend.clock_share);
    uint64_t base_ns = now_ns(), base_cycle = avr->cycle, slice_ns = base_ns;
    simulation->origin = simulation->options.from_switch_on ? UINT64_MAX : 0;
    for (;;) {
        if (simulation->board.stream.switch_on_sent && simulation->origin == UINT64_MAX)
            simulation->origin = avr->cycle;
        uint64_t end = simulation->options.for_ms < 0 ? UINT64_MAX : after_origin(simulation, simulation->options.for_ms);
        if (end_asked || avr->cycle >= end)
            return true;
        if (!run_to(simulation, earlier(end, avr->cycle + SLICE_CYCLES)))
            return false;
        double now_ms = chip_seconds(avr->cycle) * 1000;
        bridge_move(&simulation->bridge, now_ms);
        board_pump_receiver(&simulation->board);
        if (simulation->options.flat_out) {
            let_client_catch_up(simulation, now_ms);
            continue;
        }
        uint64_t due_ns = base_ns + (uint64_t)((double)(avr->cycle - base_cycle) * ns_per_cycle);
        uint64_t clock_ns = now_ns();
        if (clock_ns > due_ns + LATEST_NS) { /* stopped, or a machine too busy: time was lost, not saved up */
            simulation->slipped_ns += clock_ns - due_ns;
            base_ns += clock_ns - due_ns;
        }
        /* What is behind catches up at twice the pace, so that a host's heartbeats do not seem to stay away. */
        uint64_t soonest_ns = slice_ns + SLICE_NS / 2;
        sleep_until_ns(due_ns > soonest_ns ? due_ns : soonest_ns);
        slice_ns = now_ns();
    }
}
