/* One line of text that says what failed, where, and what was expected. */
#ifndef SIM_FAILURE_H
#define SIM_FAILURE_H

#include <stdarg.h>
#include <stdbool.h>
#include <stdio.h>

struct failure {
    char text[320];
};

/* Fills the text and returns false, so that a reader can end with "return fail(...)". */
__attribute__((format(printf, 2, 3))) static inline bool fail(struct failure *failure, const char *format, ...)
{
    va_list args;
    va_start(args, format);
    vsnprintf(failure->text, sizeof failure->text, format, args);
    va_end(args);
    return false;
}

#endif
