package firstamp.worlds;

import java.util.Set;

/**
 * One power-up of an invented set, and what was built into it.
 *
 * @param kind class of sets it belongs to, and "healthy" or the name of its fault
 * @param healthy nothing is wrong with it
 * @param beyond how many times the limit the fault is, 0 where it has no size
 * @param sheet job sheet as its owner would write it, JSON
 * @param frontEnd front-end file, JSON, or an empty text
 * @param trace the signals at the set
 * @param must rules of which at least one has to be raised; empty where none has to be
 * @param may other rules that may be raised too
 * @param fromS when the fault begins
 * @param withinS how long after that it has to be raised at the latest
 */
record World(
    String kind,
    boolean healthy,
    double beyond,
    String sheet,
    String frontEnd,
    Trace trace,
    Set<String> must,
    Set<String> may,
    double fromS,
    double withinS) {}
