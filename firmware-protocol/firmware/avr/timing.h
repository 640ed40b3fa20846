/* Settings of clock, line and converter, checked at compile time. */
#ifndef AVR_TIMING_H
#define AVR_TIMING_H

#include "core/plan.h"
#include "core/compiler.h"

#define CHIP_HZ 16000000L

/* Serial line, normal speed: baud = f / (16 (UBRR + 1)). Both are exact (data sheet, table of UBRR settings). */
#define UBRR_500K 1
#define UBRR_250K 3
#define BAUD_OF(ubrr) (CHIP_HZ / (16L * ((ubrr) + 1)))
STATIC_ASSERT(BAUD_OF(UBRR_500K) == 500000L && CHIP_HZ % (16L * (UBRR_500K + 1)) == 0);
STATIC_ASSERT(BAUD_OF(UBRR_250K) == 250000L && CHIP_HZ % (16L * (UBRR_250K + 1)) == 0);
/* Why not 115 200: the nearest divisor of double speed is 2.1 % off, of normal speed 3.5 %. */
STATIC_ASSERT(CHIP_HZ / (8L * 17) - 115200L > 115200L * 2 / 100);

/*
 * Converter: 13 clocks a conversion, 25 for the first after it was switched on (data sheet 24.4). With prescaler 32
 * that is 416 cycles and less than 32 more to meet the converter's clock, of the 1000 of a slot. 64 (832) is legal but
 * leaves 104 at worst. Both clock it above the 200 kHz for which full resolution is promised.
 */
#ifndef ADC_PRESCALER
#define ADC_PRESCALER 32
#endif
#if ADC_PRESCALER == 32
#define ADC_PRESCALER_BITS 5
#elif ADC_PRESCALER == 64
#define ADC_PRESCALER_BITS 6
#else
#error "ADC_PRESCALER must be 32 or 64: a conversion has to end within its slot of 1000 cycles"
#endif
STATIC_ASSERT(14L * ADC_PRESCALER + 100 <= CYCLES_PER_SLOT);
STATIC_ASSERT(CHIP_HZ / 1000000L == CYCLES_PER_US);
STATIC_ASSERT(CYCLES_PER_SLOT * 1000000L / (CHIP_HZ / 1000) == 62500L); /* 62.5 us in ns */

#endif
