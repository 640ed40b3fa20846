package firstamp.app;

import firstamp.model.PersonFolders;
import java.nio.file.Path;
import java.util.Objects;

/**
 * Writes paths under a person's own folder short, as a shell does, and reads them back: what stands
 * on the screen is about their files, not about where the computer keeps their folder. Immutable.
 */
public final class HomeFolder {
  private static final String SIGN = "~";

  private final Path home;

  public HomeFolder(Path home) {
    this.home = Objects.requireNonNull(home, "home").toAbsolutePath().normalize();
  }

  public static HomeFolder ofThePerson() {
    return new HomeFolder(PersonFolders.ofThisPerson().home());
  }

  public String shown(Path path) {
    Path whole = path.toAbsolutePath().normalize();
    return whole.startsWith(home) && !whole.equals(home)
        ? Path.of(SIGN).resolve(home.relativize(whole).toString()).toString()
        : path.toString();
  }

  /** A path as it was typed or shown. */
  public Path typed(String text) {
    Path path = Path.of(text.strip());
    return path.getNameCount() > 1 && path.getName(0).toString().equals(SIGN) && !path.isAbsolute()
        ? home.resolve(path.subpath(1, path.getNameCount()))
        : path;
  }
}
