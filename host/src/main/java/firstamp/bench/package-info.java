/**
 * A live or replayed power-up behind a window: what there is to see at one moment, as an immutable
 * snapshot, and the wishes of the person at the bench.
 */
package firstamp.bench;
