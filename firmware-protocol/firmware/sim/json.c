#include "json.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { MAX_DEPTH = 16, MAX_FILE_BYTES = 1 << 20, MAX_STRING = 256 };

struct reader {
    const char *name;
    const char *at;
    int line;
    int depth;
    struct failure *failure;
};

static bool refuse(struct reader *in, const char *expected)
{
    char found[24];
    if (*in->at == '\0')
        snprintf(found, sizeof found, "the end of the file");
    else
        snprintf(found, sizeof found, "\"%.12s\"", in->at);
    found[strcspn(found, "\r\n")] = '\0';
    return fail(in->failure, "%s:%d: found %s; expected %s", in->name, in->line, found, expected);
}

static void skip_space(struct reader *in)
{
    for (; *in->at == ' ' || *in->at == '\t' || *in->at == '\r' || *in->at == '\n'; in->at++)
        if (*in->at == '\n')
            in->line++;
}

static bool read_string(struct reader *in, char **text)
{
    char buffer[MAX_STRING];
    size_t length = 0;
    if (*in->at != '"')
        return refuse(in, "a string in double quotes");
    for (in->at++; *in->at != '"'; in->at++) {
        char c = *in->at;
        if (c == '\0' || (unsigned char)c < 0x20 || length + 1 == sizeof buffer)
            return refuse(in, "a closing quote within 255 characters");
        if (c == '\\') {
            static const char ESCAPES[] = "\"\\/bfnrt", MEANING[] = "\"\\/\b\f\n\r\t";
            in->at++;
            const char *found = *in->at == '\0' ? NULL : strchr(ESCAPES, *in->at);
            if (found == NULL)
                return refuse(in, "one of the short escapes (names here need no \\u)");
            c = MEANING[found - ESCAPES];
        }
        buffer[length++] = c;
    }
    in->at++;
    buffer[length] = '\0';
    *text = strdup(buffer);
    return *text != NULL || refuse(in, "enough memory");
}

static bool read_value(struct reader *in, struct json *value);

static bool add_item(struct reader *in, struct json *list, char *key)
{
    struct json *items = realloc(list->items, (list->count + 1) * sizeof *items);
    char **keys = items == NULL ? NULL : realloc(list->keys, (list->count + 1) * sizeof *keys);
    if (items != NULL)
        list->items = items;
    if (keys == NULL) {
        free(key);
        return refuse(in, "enough memory");
    }
    list->keys = keys;
    list->keys[list->count] = key;
    memset(&list->items[list->count], 0, sizeof *items);
    list->count++;
    return read_value(in, &list->items[list->count - 1]);
}

static bool read_member(struct reader *in, struct json *object)
{
    char *key;
    if (!read_string(in, &key))
        return false;
    for (size_t i = 0; i < object->count; i++) {
        if (strcmp(object->keys[i], key) == 0) {
            fail(in->failure, "%s:%d: key \"%s\" twice; expected each key once", in->name, in->line, key);
            free(key);
            return false;
        }
    }
    skip_space(in);
    if (*in->at != ':') {
        free(key);
        return refuse(in, "a colon after the key");
    }
    in->at++;
    return add_item(in, object, key);
}

static bool read_list(struct reader *in, struct json *value, char close)
{
    if (++in->depth > MAX_DEPTH)
        return refuse(in, "at most 16 levels");
    in->at++;
    skip_space(in);
    if (*in->at == close) {
        in->at++;
        in->depth--;
        return true;
    }
    for (;;) {
        skip_space(in);
        if (!(value->kind == JSON_OBJECT ? read_member(in, value) : add_item(in, value, NULL)))
            return false;
        skip_space(in);
        if (*in->at == close)
            break;
        if (*in->at != ',')
            return refuse(in, close == '}' ? "a comma or }" : "a comma or ]");
        in->at++;
    }
    in->at++;
    in->depth--;
    return true;
}

static bool read_plain_number(struct reader *in, struct json *value)
{
    size_t length = strspn(in->at, "+-0123456789.eE");
    const char *digits = in->at + (*in->at == '-');
    if (length == 0 || *digits < '0' || *digits > '9' || (digits[0] == '0' && digits[1] >= '0' && digits[1] <= '9'))
        return refuse(in, "a value");
    char *end;
    errno = 0;
    value->number = strtod(in->at, &end);
    if (end != in->at + length || errno != 0 || !isfinite(value->number))
        return refuse(in, "a finite number");
    in->at = end;
    return true;
}

static bool read_value(struct reader *in, struct json *value)
{
    skip_space(in);
    value->line = in->line;
    if (*in->at == '{' || *in->at == '[') {
        value->kind = *in->at == '{' ? JSON_OBJECT : JSON_ARRAY;
        return read_list(in, value, *in->at == '{' ? '}' : ']');
    }
    if (*in->at == '"') {
        value->kind = JSON_STRING;
        return read_string(in, &value->text);
    }
    static const struct {
        const char *word;
        enum json_kind kind;
        bool truth;
    } WORDS[] = {{"true", JSON_BOOL, true}, {"false", JSON_BOOL, false}, {"null", JSON_NULL, false}};
    for (size_t i = 0; i < sizeof WORDS / sizeof WORDS[0]; i++) {
        size_t length = strlen(WORDS[i].word);
        if (strncmp(in->at, WORDS[i].word, length) == 0) {
            value->kind = WORDS[i].kind;
            value->truth = WORDS[i].truth;
            in->at += length;
            return true;
        }
    }
    value->kind = JSON_NUMBER;
    return read_plain_number(in, value);
}

bool json_read_text(struct json *value, const char *name, const char *text, struct failure *failure)
{
    struct reader in = {.name = name, .at = text, .line = 1, .failure = failure};
    memset(value, 0, sizeof *value);
    bool ok = read_value(&in, value);
    if (ok) {
        skip_space(&in);
        ok = *in.at == '\0' || refuse(&in, "nothing after the value");
    }
    if (!ok)
        json_free(value);
    return ok;
}

bool json_read_file(struct json *value, const char *path, struct failure *failure)
{
    FILE *file = fopen(path, "r");
    if (file == NULL)
        return fail(failure, "%s: cannot be opened: %s; expected a JSON file", path, strerror(errno));
    char *text = malloc(MAX_FILE_BYTES);
    size_t length = text == NULL ? 0 : fread(text, 1, MAX_FILE_BYTES, file);
    fclose(file);
    bool ok;
    if (text == NULL || length == MAX_FILE_BYTES) {
        ok = fail(failure, "%s: too long; expected less than 1 MiB", path);
    } else {
        text[length] = '\0';
        ok = json_read_text(value, path, text, failure);
    }
    free(text);
    return ok;
}

void json_free(struct json *value)
{
    for (size_t i = 0; i < value->count; i++) {
        free(value->keys[i]);
        json_free(&value->items[i]);
    }
    free(value->keys);
    free(value->items);
    free(value->text);
    memset(value, 0, sizeof *value);
}

const char *json_kind_name(enum json_kind kind)
{
    static const char *const NAMES[] = {"null", "true or false", "a number", "a string", "an array", "an object"};
    return NAMES[kind];
}
