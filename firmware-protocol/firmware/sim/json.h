/* A small JSON reader for front-end files: RFC 8259, with the line of every value for messages. */
#ifndef SIM_JSON_H
#define SIM_JSON_H

#include <stddef.h>

#include "failure.h"

enum json_kind { JSON_NULL, JSON_BOOL, JSON_NUMBER, JSON_STRING, JSON_ARRAY, JSON_OBJECT };

struct json {
    enum json_kind kind;
    int line;
    bool truth;
    double number;
    char *text;         /* of a string */
    size_t count;       /* of an array or object */
    char **keys;        /* of an object */
    struct json *items; /* of an array or object */
};

/* Reads the whole file as one value; the caller frees it. Names are used in messages. */
bool json_read_file(struct json *value, const char *path, struct failure *failure);
bool json_read_text(struct json *value, const char *name, const char *text, struct failure *failure);
void json_free(struct json *value);

const char *json_kind_name(enum json_kind kind);

#endif
