/* Where all memory is alike. */
#ifndef ROM_H
#define ROM_H

#include <string.h>

#define ROM
#define ROM_READ(to, from, bytes) memcpy((to), (from), (bytes))

#endif
