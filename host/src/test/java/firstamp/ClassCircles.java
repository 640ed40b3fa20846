package firstamp;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * Circles of top-level classes that need each other: the strongly connected components of the graph
 * of dependencies (Tarjan 1972), a nested class counted with the one around it.
 */
final class ClassCircles {
  private final Map<String, Set<String>> uses = new TreeMap<>();
  private final Map<String, Integer> index = new HashMap<>();
  private final Map<String, Integer> low = new HashMap<>();
  private final Deque<String> stack = new ArrayDeque<>();
  private final List<List<String>> found = new ArrayList<>();

  private ClassCircles(Map<String, ? extends Collection<String>> dependencies) {
    dependencies.forEach((name, others) -> uses.put(name, new TreeSet<>(others)));
    for (String name : uses.keySet()) {
      if (!index.containsKey(name)) {
        visit(name);
      }
    }
  }

  /** All circles of two classes or more, each in alphabetical order. */
  static List<List<String>> in(JavaClasses classes) {
    Map<String, Set<String>> uses = new TreeMap<>();
    for (JavaClass each : classes) {
      Set<String> others = uses.computeIfAbsent(topLevel(each), name -> new TreeSet<>());
      for (Dependency dependency : each.getDirectDependenciesFromSelf()) {
        others.add(topLevel(dependency.getTargetClass().getBaseComponentType()));
      }
    }
    return in(uses);
  }

  /** The same of names and what they use. */
  static List<List<String>> in(Map<String, ? extends Collection<String>> dependencies) {
    return new ClassCircles(dependencies).found;
  }

  private static String topLevel(JavaClass of) {
    String name = of.getName();
    int nested = name.indexOf('$');
    return nested < 0 ? name : name.substring(0, nested);
  }

  private void visit(String name) {
    index.put(name, index.size());
    low.put(name, index.get(name));
    stack.push(name);
    for (String other : uses.get(name)) {
      if (!uses.containsKey(other)) {
        continue;
      }
      if (!index.containsKey(other)) {
        visit(other);
        low.merge(name, low.get(other), Math::min);
      } else if (stack.contains(other)) {
        low.merge(name, index.get(other), Math::min);
      }
    }
    if (low.get(name).equals(index.get(name))) {
      List<String> circle = new ArrayList<>();
      String last;
      do {
        last = stack.pop();
        circle.add(last);
      } while (!last.equals(name));
      if (circle.size() > 1) {
        circle.sort(null);
        found.add(circle);
      }
    }
  }
}
