#include "spice.h"

#include <ctype.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include <ngspice/sharedspice.h>

enum { MAX_LINES = 512, LINE_BYTES = 512, HEARD_BYTES = 2000, TRIES_LOOKED_AT = 20000 };

static const double LEAST_S = 2e-6; /* what so many tries of a step have to advance; the shortest steps asked for are 1 us */

/* The simulator hands back one pointer, but keeps its own state in the process: so does this. */
static struct {
    struct spice *spice;
    const struct spice_follower *follower;
    int index[SPICE_MAX_NODES]; /* of each node among the simulator's vectors */
    int time_index;
    bool ended;  /* by the follower */
    bool failed; /* by the simulator */
    bool finished;
    double counted_from_s;
    int tries;
    char heard[HEARD_BYTES]; /* the last of what the simulator has said about errors */
} run;

size_t spice_follow(struct spice *spice, const char *node)
{
    for (size_t i = 0; i < spice->nodes; i++)
        if (strcmp(spice->node[i], node) == 0)
            return i;
    if (spice->nodes == SPICE_MAX_NODES)
        abort(); /* the caller's lists are shorter than that */
    spice->node[spice->nodes] = node;
    return spice->nodes++;
}

/* Whether a vector is the one of a node: called as the node, or V(node) where that begins with a digit. */
static bool same_name(const char *vector, const char *node)
{
    bool wrapped = strncmp(vector, "V(", 2) == 0;
    if (wrapped)
        vector += 2;
    while (*vector != '\0' && tolower((unsigned char)*vector) == tolower((unsigned char)*node)) {
        vector++;
        node++;
    }
    return *node == '\0' && strcmp(vector, wrapped ? ")" : "") == 0;
}

static int on_text(char *text, int ident, void *param)
{
    (void)ident;
    (void)param;
    const char *line = strncmp(text, "stderr ", 7) == 0 ? text + 7 : strncmp(text, "stdout ", 7) == 0 ? text + 7 : text;
    if (strncmp(text, "stderr ", 7) == 0 && strncmp(line, "Note", 4) != 0 && line[0] != '\0') {
        size_t used = strlen(run.heard);
        if (used + strlen(line) + 2 < HEARD_BYTES)
            snprintf(run.heard + used, HEARD_BYTES - used, "%s\n", line);
    }
    if (!run.spice->quiet)
        fprintf(stderr, "%s\n", line);
    return 0;
}

static int on_status(char *status, int ident, void *param)
{
    (void)status;
    (void)ident;
    (void)param;
    return 0;
}

static int on_exit_asked(int status, NG_BOOL at_once, NG_BOOL by_quit, int ident, void *param)
{
    (void)status;
    (void)at_once;
    (void)by_quit;
    (void)ident;
    (void)param;
    run.failed = true;
    return 0;
}

static int on_background(NG_BOOL not_running, int ident, void *param)
{
    (void)not_running;
    (void)ident;
    (void)param;
    return 0;
}

/* A callback cannot stop the simulator: what is written is on the disk or of no use, so the process ends here. */
static void exit_now(void)
{
    fprintf(stderr, "probe-cosim: the circuit cannot be simulated: %s", run.heard);
    exit(70);
}

static int on_vectors(pvecinfoall all, int ident, void *param)
{
    (void)ident;
    (void)param;
    run.time_index = -1;
    for (size_t n = 0; n < run.spice->nodes; n++)
        run.index[n] = -1;
    for (int v = 0; v < all->veccount; v++) {
        if (same_name(all->vecs[v]->vecname, "time"))
            run.time_index = v;
        for (size_t n = 0; n < run.spice->nodes; n++)
            if (same_name(all->vecs[v]->vecname, run.spice->node[n]))
                run.index[n] = v;
    }
    for (size_t n = 0; n < run.spice->nodes; n++) {
        if (run.index[n] < 0 && !run.failed) {
            snprintf(run.heard, HEARD_BYTES, "the circuit has no node \"%s\"\n", run.spice->node[n]);
            run.failed = true;
        }
    }
    return 0;
}

static int on_point(pvecvaluesall all, int count, int ident, void *param)
{
    (void)count;
    (void)ident;
    (void)param;
    if (run.time_index < 0 || run.failed || run.ended)
        return 0;
    for (size_t n = 0; n < run.spice->nodes; n++)
        run.spice->volts[n] = all->vecsa[run.index[n]]->creal;
    run.finished = true;
    if (!run.follower->accepted(run.follower->self, all->vecsa[run.time_index]->creal))
        run.ended = true;
    return 0;
}

static int on_source(double *volts, double seconds, char *name, int ident, void *param)
{
    (void)ident;
    (void)param;
    *volts = run.follower->source_volts(run.follower->self, name, seconds);
    return 0;
}

static int on_current_source(double *amperes, double seconds, char *name, int ident, void *param)
{
    (void)seconds;
    (void)name;
    (void)ident;
    (void)param;
    *amperes = 0;
    return 0;
}

static int on_step(double seconds, double *step, double last_step, int redo, int ident, int where, void *param)
{
    (void)last_step;
    (void)redo;
    (void)ident;
    (void)where;
    (void)param;
    if (++run.tries == TRIES_LOOKED_AT) {
        if (seconds - run.counted_from_s < LEAST_S) {
            snprintf(run.heard, HEARD_BYTES, "it gets nowhere at %.9g s (%d tries for %.3g s); try another integration method or a damped node\n",
                     seconds, TRIES_LOOKED_AT, seconds - run.counted_from_s);
            exit_now();
        }
        run.tries = 0;
        run.counted_from_s = seconds;
    }
    double longest = run.follower->longest_step(run.follower->self, seconds);
    if (*step > longest)
        *step = longest;
    return 0;
}

static char *line_of(const char *text)
{
    char *copy = malloc(strlen(text) + 1);
    if (copy != NULL)
        strcpy(copy, text);
    return copy;
}

bool spice_run(struct spice *spice, const struct spice_follower *follower, const char *const *lines, double seconds, double longest_s,
               struct failure *failure)
{
    static int ident = 0;
    char *deck[MAX_LINES + 8];
    char line[LINE_BYTES];
    int count = 0;
    memset(&run, 0, sizeof run);
    run.spice = spice;
    run.follower = follower;
    ngSpice_Init(on_text, on_status, on_exit_asked, on_point, on_vectors, on_background, NULL);
    ngSpice_Init_Sync(on_source, on_current_source, on_step, &ident, NULL);
    for (; lines[count] != NULL && count < MAX_LINES; count++)
        deck[count] = line_of(lines[count]);
    for (size_t n = 0; n < spice->nodes; n++) {
        snprintf(line, sizeof line, ".save v(%s)", spice->node[n]);
        deck[count++] = line_of(line);
        if (count >= MAX_LINES)
            return fail(failure, "the netlist round the chip has over %d lines", MAX_LINES);
    }
    snprintf(line, sizeof line, ".tran %.9g %.9g 0 %.9g", longest_s, seconds, longest_s);
    deck[count++] = line_of(line);
    deck[count++] = line_of(".end");
    deck[count] = NULL;
    int refused = ngSpice_Circ(deck);
    for (int i = 0; i < count; i++)
        free(deck[i]);
    if (refused != 0 || run.failed)
        return fail(failure, "the circuit cannot be read: %.900s", run.heard);
    char command[] = "run";
    int stopped = ngSpice_Command(command);
    if (run.failed || (stopped != 0 && !run.ended) || !run.finished)
        return fail(failure, "the circuit cannot be simulated: %.900s", run.heard);
    return true;
}
