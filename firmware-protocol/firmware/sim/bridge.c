#include "bridge.h"

#include <errno.h>
#include <fcntl.h>
#include <poll.h>
#include <stdlib.h>
#include <string.h>
#include <sys/ioctl.h>
#include <termios.h>
#include <unistd.h>

/* As much as a serial adapter keeps; more stays with the client, which sees that the line is slow. */
enum { FROM_HOST_BYTES = 4096, EMPTY_MS = 50 };

const struct bridge_dials BRIDGE_NO_FAULTS = {.close_at_ms = -1};

static bool open_pair(struct bridge *bridge, struct failure *failure)
{
    bridge->master = posix_openpt(O_RDWR | O_NOCTTY | O_NONBLOCK);
    if (bridge->master < 0 || grantpt(bridge->master) != 0 || unlockpt(bridge->master) != 0
        || ptsname_r(bridge->master, bridge->path, sizeof bridge->path) != 0)
        return fail(failure, "no pseudo-terminal: %s; expected /dev/ptmx to work", strerror(errno));
    bridge->slave = open(bridge->path, O_RDWR | O_NOCTTY);
    struct termios line;
    if (bridge->slave < 0 || tcgetattr(bridge->slave, &line) != 0)
        return fail(failure, "%s: cannot be opened: %s; expected a pseudo-terminal", bridge->path, strerror(errno));
    cfmakeraw(&line);
    if (tcsetattr(bridge->slave, TCSANOW, &line) != 0)
        return fail(failure, "%s: cannot be made raw: %s", bridge->path, strerror(errno));
    return true;
}

bool bridge_open(struct bridge *bridge, const struct bridge_dials *dials, struct failure *failure)
{
    memset(bridge, 0, sizeof *bridge);
    bridge->dials = *dials;
    bridge->slave = -1;
    bool ok = open_pair(bridge, failure);
    if (!ok)
        bridge_close(bridge);
    return ok;
}

void bridge_put(struct bridge *bridge, uint8_t byte)
{
    bridge->passed++;
    if (bridge->dials.drop_byte_every != 0 && bridge->passed % bridge->dials.drop_byte_every == 0)
        return;
    if (bridge->dials.flip_bit_every != 0 && bridge->passed % bridge->dials.flip_bit_every == 0)
        byte = (uint8_t)(byte ^ 1u << bridge->passed / bridge->dials.flip_bit_every % 8);
    if (bridge->master < 0 || !queue_put(&bridge->to_host, byte))
        bridge->bytes_lost++;
}

static void send(struct bridge *bridge)
{
    while (bridge->to_host.count > 0) {
        ssize_t done = write(bridge->master, bridge->to_host.bytes + bridge->to_host.head, queue_run(&bridge->to_host));
        if (done <= 0)
            return;
        queue_take(&bridge->to_host, (size_t)done);
    }
}

static void receive(struct bridge *bridge)
{
    uint8_t bytes[512];
    while (bridge->from_host.count + sizeof bytes <= FROM_HOST_BYTES) {
        ssize_t done = read(bridge->master, bytes, sizeof bytes);
        if (done <= 0)
            return;
        for (ssize_t i = 0; i < done; i++)
            queue_put(&bridge->from_host, bytes[i]);
    }
}

void bridge_move(struct bridge *bridge, double now_ms)
{
    if (bridge->dials.close_at_ms >= 0 && now_ms >= bridge->dials.close_at_ms)
        bridge_close(bridge);
    if (bridge->master < 0)
        return;
    receive(bridge);
    if (now_ms < bridge->dials.stall_from_ms || now_ms >= bridge->dials.stall_to_ms)
        send(bridge);
}

bool bridge_get(struct bridge *bridge, uint8_t *byte)
{
    if (bridge->from_host.count == 0)
        return false;
    *byte = bridge->from_host.bytes[bridge->from_host.head];
    queue_take(&bridge->from_host, 1);
    return true;
}

void bridge_wait_for_client(struct bridge *bridge, int timeout_ms)
{
    struct pollfd poll_master = {.fd = bridge->master, .events = POLLOUT};
    if (bridge->master >= 0)
        poll(&poll_master, 1, timeout_ms);
}

/*
 * What the client has not read when the terminal closes is lost to it. Bytes on their way through the terminal are counted
 * nowhere for a moment, so "nothing left" has to last.
 */
void bridge_drain(struct bridge *bridge, int patience_ms)
{
    int unread = 0, before = -1, empty_ms = 0;
    for (int waited_ms = 0; bridge->slave >= 0 && waited_ms < patience_ms && empty_ms < EMPTY_MS; waited_ms++) {
        send(bridge);
        if (ioctl(bridge->slave, FIONREAD, &unread) != 0)
            return;
        empty_ms = unread == 0 && bridge->to_host.count == 0 ? empty_ms + 1 : 0;
        if (unread != before)
            waited_ms = 0;
        before = unread;
        poll(NULL, 0, 1);
    }
}

void bridge_close(struct bridge *bridge)
{
    if (bridge->slave >= 0)
        close(bridge->slave);
    if (bridge->master >= 0)
        close(bridge->master);
    bridge->slave = bridge->master = -1;
    bridge->bytes_lost += bridge->to_host.count;
    queue_take(&bridge->to_host, bridge->to_host.count);
    queue_take(&bridge->from_host, bridge->from_host.count);
}
