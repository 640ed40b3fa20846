/** What probe and host can say to each other: one record a message, in two sealed lists. */
package firstamp.protocol.message;
