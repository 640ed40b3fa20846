/**
 * The services behind window and command line, without a screen: the bench with its log, its job
 * sheets and its probe box, settings, the sets and where each job stands.
 */
package firstamp.app;
