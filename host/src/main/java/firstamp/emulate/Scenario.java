package firstamp.emulate;

import java.util.function.Supplier;

/**
 * One thing that can happen to an invented set.
 *
 * @param description one sentence for the person
 * @param sheet resource that holds the job sheet
 * @param values of the set, made anew for every run
 * @param script what happens as time passes
 */
record Scenario(String description, String sheet, Supplier<SetValues> values, Script script) {}
