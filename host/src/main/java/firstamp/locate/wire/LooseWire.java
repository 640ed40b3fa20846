package firstamp.locate.wire;

import java.util.List;

/**
 * A wire whose place is not known.
 *
 * @param name as the person calls it
 * @param colour for finding it again; says little
 * @param build plain, screened, twisted, thick
 * @param reachMm how far its free end reaches, null = not measured
 * @param foundAt where its free end was found
 * @param places it may belong to, empty = all
 */
public record LooseWire(
    String name, String colour, String build, Double reachMm, String foundAt, List<String> places) {
  /** Copies the list. */
  public LooseWire {
    places = List.copyOf(places);
  }
}
