/* avr-gcc 5.4 refuses _Static_assert under -std=c99 -Wpedantic; an array of negative size is an error everywhere. */
#ifndef CORE_STATIC_ASSERT_H
#define CORE_STATIC_ASSERT_H

#define STATIC_ASSERT_JOIN2(a, b) a##b
#define STATIC_ASSERT_JOIN(a, b) STATIC_ASSERT_JOIN2(a, b)
#define STATIC_ASSERT(condition) typedef char STATIC_ASSERT_JOIN(static_assert_, __LINE__)[(condition) ? 1 : -1]

#endif
