package firstamp.sheet;

import firstamp.model.JobSheet;
import firstamp.model.limits.LimitException;
import firstamp.model.text.Numbers;

/**
 * A job sheet as read, which still knows line and column of each value.
 *
 * <p>Immutable.
 */
public final class SheetDocument {
  private final String file;
  private final JobSheet sheet;
  private final Node top;

  SheetDocument(String file, JobSheet sheet, Node top) {
    this.file = file;
    this.sheet = sheet;
    this.top = top;
  }

  /** Name of the file. */
  public String file() {
    return file;
  }

  /** As stated, without defaults. */
  public JobSheet sheet() {
    return sheet;
  }

  /** A limit that the probe cannot watch, as an error of this sheet with line and column. */
  public SheetException locate(LimitException problem) {
    Node node = find(top, problem.field());
    return new SheetException(
        file,
        node == null ? 0 : node.line(),
        node == null ? 0 : node.column(),
        problem.field(),
        Numbers.text(problem.value()),
        problem.allowed(),
        problem.remedy());
  }

  private static Node find(Node node, String field) {
    if (node.field().equals(field)) {
      return node;
    }
    Iterable<Node> inner =
        node.isObject()
            ? node.members().values()
            : node.isList() ? node.items() : java.util.List.of();
    for (Node member : inner) {
      Node found = find(member, field);
      if (found != null) {
        return found;
      }
    }
    return null;
  }
}
