#include "wiring.h"

#include <ctype.h>
#include <errno.h>
#include <string.h>

static bool is_port_pin(const char *name)
{
    return name[0] == 'P' && (name[1] == 'B' || name[1] == 'D') && name[2] >= '0' && name[2] <= '7' && name[3] == '\0';
}

/* Where the node of a name is kept; NULL when the chip has no such pin. */
static char *place_of(struct wiring *wiring, const char *name)
{
    if (is_port_pin(name) && wiring->pins < WIRING_MAX_PINS) {
        struct wired_pin *pin = &wiring->pin[wiring->pins++];
        pin->port = name[1];
        pin->bit = (uint8_t)(name[2] - '0');
        return pin->node;
    }
    if (strncmp(name, "ADC", 3) == 0 && name[3] >= '0' && name[3] <= '7' && name[4] == '\0')
        return wiring->converter[name[3] - '0'];
    if (strcmp(name, "AIN0") == 0)
        return wiring->comparator_plus;
    if (strcmp(name, "AIN1") == 0)
        return wiring->comparator_minus;
    if (strcmp(name, "AREF") == 0)
        return wiring->reference;
    if (strcmp(name, "VCC") == 0)
        return wiring->supply;
    return strcmp(name, "GND") == 0 ? wiring->ground : NULL;
}

static bool take_line(struct wiring *wiring, const char *path, int number, const char *line, struct failure *failure)
{
    char name[WIRING_NAME_BYTES], node[WIRING_NAME_BYTES], mark[WIRING_NAME_BYTES], more;
    int words = sscanf(line, "%23s %23s %23s %c", name, node, mark, &more);
    if (words <= 0 || name[0] == '#')
        return true;
    bool closes = words == 3 && is_port_pin(name) && strcmp(mark, "closes") == 0;
    bool pulses = words == 3 && is_port_pin(name) && strcmp(mark, "pulses") == 0;
    char *place = words == 2 || closes || pulses ? place_of(wiring, name) : NULL;
    if (place == NULL)
        return fail(failure, "%s, line %d: expected a pin (PB0 to PB7, PD0 to PD7, ADC0 to ADC7, AIN0, AIN1, AREF, VCC, GND), a node, for a port's pin \"closes\" or \"pulses\"",
                    path, number);
    if (place[0] != '\0')
        return fail(failure, "%s, line %d: %s is joined twice", path, number, name);
    for (size_t i = 0; node[i] != '\0'; i++)
        place[i] = (char)tolower((unsigned char)node[i]);
    if (closes || pulses) {
        wiring->pin[wiring->pins - 1].closes = closes;
        wiring->pin[wiring->pins - 1].pulses = pulses;
    }
    return true;
}

bool wiring_read(struct wiring *wiring, const char *path, struct failure *failure)
{
    char line[256];
    bool whole = true;
    memset(wiring, 0, sizeof *wiring);
    FILE *file = fopen(path, "r");
    if (file == NULL)
        return fail(failure, "%s: cannot be read: %s; expected the list of pins", path, strerror(errno));
    for (int number = 1; whole && fgets(line, sizeof line, file) != NULL; number++)
        whole = take_line(wiring, path, number, line, failure);
    fclose(file);
    if (!whole)
        return false;
    for (size_t i = 0; i < wiring->pins; i++)
        for (size_t k = 0; k < i; k++)
            if (wiring->pin[i].port == wiring->pin[k].port && wiring->pin[i].bit == wiring->pin[k].bit)
                return fail(failure, "%s: P%c%u is joined twice", path, wiring->pin[i].port, wiring->pin[i].bit);
    if (wiring->reference[0] == '\0' || wiring->supply[0] == '\0' || wiring->ground[0] == '\0')
        return fail(failure, "%s: AREF, VCC and GND have to be joined", path);
    return true;
}
