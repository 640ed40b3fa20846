/** The commands: their options, what they ask of the services, their exit codes. */
package firstamp.cli.command;
