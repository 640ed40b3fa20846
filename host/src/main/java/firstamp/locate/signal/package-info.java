/**
 * Where a signal stops: a path of points and joints, what was measured along it, and where to
 * measure next. A state is a list of what the person said and measured; everything else follows
 * from it.
 */
package firstamp.locate.signal;
