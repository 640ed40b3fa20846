/** What a probe box can watch, and how the limits of a job sheet become its own. */
package firstamp.model.limits;
