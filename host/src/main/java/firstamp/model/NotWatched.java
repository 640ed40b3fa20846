package firstamp.model;

/**
 * Something that was not watched, and why.
 *
 * @param what for example "rail 2" or "ripple 1"
 * @param why for example "no clip"
 */
public record NotWatched(String what, String why) {}
