package firstamp.model;

import java.nio.file.Path;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;

/**
 * Where the files of the person who runs the program belong.
 *
 * <p>{@code HOME} comes before what the system's list of users says: a script, a container or a
 * test that sets it must never reach the bench log of somebody else. Immutable.
 */
public final class PersonFolders {
  private final String system;
  private final Map<String, String> environment;
  private final String listed;

  /**
   * Folders of one person.
   *
   * @param system name of the operating system as Java gives it
   * @param environment variables
   * @param listed home folder by the system's list of users
   */
  PersonFolders(String system, Map<String, String> environment, String listed) {
    this.system = Objects.requireNonNull(system, "system").toLowerCase(Locale.ROOT);
    this.environment = Map.copyOf(environment);
    this.listed = Objects.requireNonNull(listed, "listed");
  }

  /** Those of the person who runs this program. */
  public static PersonFolders ofThisPerson() {
    return new PersonFolders(
        System.getProperty("os.name", ""), System.getenv(), System.getProperty("user.home", "."));
  }

  /** The home folder. */
  public Path home() {
    Path given = absolute("HOME");
    return windows() || given == null ? Path.of(listed) : given;
  }

  /** The folder for what is kept for years, of all programs. */
  public Path data() {
    if (windows()) {
      String local = environment.get("LOCALAPPDATA");
      return local == null || local.isBlank()
          ? home().resolve("AppData").resolve("Local")
          : Path.of(local);
    }
    if (system.contains("mac")) {
      return home().resolve("Library").resolve("Application Support");
    }
    Path given = absolute("XDG_DATA_HOME");
    return given == null ? home().resolve(".local").resolve("share") : given;
  }

  private boolean windows() {
    return system.contains("win") && !system.contains("darwin");
  }

  /** XDG base directory specification (from memory): a relative path is ignored. */
  private Path absolute(String variable) {
    String value = environment.get(variable);
    return value != null && value.startsWith("/") ? Path.of(value) : null;
  }
}
