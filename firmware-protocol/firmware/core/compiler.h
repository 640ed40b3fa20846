/* What compilers differ in. */
#ifndef CORE_COMPILER_H
#define CORE_COMPILER_H

/* avr-gcc 5.4 refuses _Static_assert under -std=c99 -Wpedantic; an array of negative size is an error everywhere. */
#define STATIC_ASSERT_JOIN2(a, b) a##b
#define STATIC_ASSERT_JOIN(a, b) STATIC_ASSERT_JOIN2(a, b)
#define STATIC_ASSERT(condition) typedef char STATIC_ASSERT_JOIN(static_assert_, __LINE__)[(condition) ? 1 : -1]

#define CORE_PACKED __attribute__((packed))

/* Keeps what happens once an arming out of interrupt handlers that run at every conversion, and out of main. */
#ifdef __GNUC__
#define CORE_RARE __attribute__((noinline))
#else
#define CORE_RARE
#endif

/*
 * The chip takes four bytes of program to reach a fixed address and two to reach the 64 bytes behind a pointer. The
 * compiler, which sees that there is one probe, makes every pointer a fixed address; this keeps it from that.
 */
#ifdef __AVR__
#define CORE_NEAR(pointer) __asm__("" : "+r"(pointer))
#else
#define CORE_NEAR(pointer) ((void)(pointer))
#endif

#endif
