#include "fields.h"

#include <stdio.h>

bool field_bad(const char *name, const struct json *value, const char *field, const char *expected,
                      struct failure *failure)
{
    char found[64];
    if (value->kind == JSON_NUMBER)
        snprintf(found, sizeof found, "%g", value->number);
    else if (value->kind == JSON_STRING)
        snprintf(found, sizeof found, "\"%.40s\"", value->text);
    else if (value->kind == JSON_BOOL)
        snprintf(found, sizeof found, "%s", value->truth ? "true" : "false");
    else
        snprintf(found, sizeof found, "%s", json_kind_name(value->kind));
    return fail(failure, "%s:%d: %s is %s; expected %s", name, value->line, field, found, expected);
}

bool field_number(const char *name, const struct json *value, const char *field, double lowest, double highest,
                        double *number, struct failure *failure)
{
    char expected[64];
    snprintf(expected, sizeof expected, "a number from %g to %g", lowest, highest);
    if (value->kind != JSON_NUMBER || value->number < lowest || value->number > highest)
        return field_bad(name, value, field, expected, failure);
    *number = value->number;
    return true;
}

bool field_object(const char *name, const struct json *value, const char *field, struct failure *failure)
{
    return value->kind == JSON_OBJECT || field_bad(name, value, field, "an object", failure);
}

bool field_bool(const char *name, const struct json *value, const char *field, bool *truth,
                      struct failure *failure)
{
    if (value->kind != JSON_BOOL)
        return field_bad(name, value, field, "true or false", failure);
    *truth = value->truth;
    return true;
}
