/** What must be asked and answered before the switch may close, and how long an answer holds. */
package firstamp.run.questions;
