package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;

/**
 * The launcher on a copy of itself beside a jar of these classes: the classes kept for quick starts
 * are used, and nothing that can be wrong with them stops a start or gets into what it prints.
 */
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class LauncherTest {
  private static final Path LAUNCHER = Path.of("firstamp").toAbsolutePath();

  @TempDir static Path folder;
  private static Tree tree;
  private static byte[] good;

  /** What a start printed. */
  private record Start(int exitCode, String out, String err) {
    static final Start QUIET = new Start(0, "firstamp of a test\n", "");

    boolean prepared() {
      return exitCode == 0
          && out.equals(QUIET.out)
          && err.startsWith("firstamp: preparing quick starts")
          && err.lines().count() == 1;
    }
  }

  @BeforeAll
  static void build() throws Exception {
    assumeTrue(File.separatorChar == '/', "the launcher of this system is another one");
    tree = Tree.of(folder.resolve("whole"), "nothing");
    assertThat(tree.start()).matches(Start::prepared);
    assertThat(tree.archive()).as(tree.log()).exists();
    good = Files.readAllBytes(tree.archive());
  }

  private static void keep(byte[] archive) throws IOException {
    Files.deleteIfExists(tree.archive());
    Files.write(tree.archive(), archive);
  }

  @AfterEach
  void putBack() throws IOException {
    keep(good);
  }

  @Test
  void takesItsClassesFromWhatWasKept() throws Exception {
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
  }

  @Test
  void startsFromTheJarWhereWhatWasKeptIsDamaged() throws Exception {
    byte[] damaged = good.clone();
    for (int at = damaged.length / 2; at < damaged.length / 2 + 4096; at++) {
      damaged[at] ^= 0x55;
    }
    keep(damaged);
    assertThat(tree.sourceOfMain()).startsWith("file:").endsWith("firstamp-host.jar");
  }

  @Test
  void startsFromTheJarWhereWhatWasKeptIsRubbish() throws Exception {
    keep(new byte[good.length]);
    assertThat(tree.sourceOfMain()).startsWith("file:").endsWith("firstamp-host.jar");
  }

  @Test
  void preparesAgainWhereWhatWasKeptIsCutOff() throws Exception {
    keep(Arrays.copyOf(good, good.length / 3));
    assertThat(tree.start()).matches(Start::prepared);
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
    good = Files.readAllBytes(tree.archive());
  }

  @Test
  void preparesAgainForANewerJar() throws Exception {
    Path jar = tree.target().resolve("firstamp-host.jar");
    FileTime prepared = Files.getLastModifiedTime(tree.target().resolve("quick-start.for"));
    Files.setLastModifiedTime(jar, FileTime.fromMillis(prepared.toMillis() + 1000));
    assertThat(tree.start()).matches(Start::prepared);
    assertThat(tree.sourceOfMain()).isEqualTo("shared objects file (top)");
    good = Files.readAllBytes(tree.archive());
  }

  @Test
  void startsAllTheSameWhereNothingCanBeKeptAndDoesNotTryAgain() throws Exception {
    Tree without = Tree.of(folder.resolve("without"), "QuickStart");
    assertThat(without.start()).matches(Start::prepared);
    assertThat(without.archive()).doesNotExist();
    assertThat(without.start()).isEqualTo(Start.QUIET);
  }

  /**
   * A copy of the launcher with a jar that it does not have to build.
   *
   * @param root of everything
   */
  private record Tree(Path root) {

    /** Leaves classes out whose name begins so. */
    static Tree of(Path root, String leftOut) throws Exception {
      Tree tree = new Tree(root);
      Files.createDirectories(tree.target().resolve("lib"));
      Files.copy(LAUNCHER, root.resolve("host/firstamp"));
      Path own = Path.of(Main.class.getProtectionDomain().getCodeSource().getLocation().toURI());
      List<String> classPath = new ArrayList<>();
      for (String entry : System.getProperty("java.class.path").split(File.pathSeparator)) {
        Path path = Path.of(entry);
        if (Files.isDirectory(path) && !path.equals(own)) {
          String name = "lib/part" + classPath.size() + ".jar";
          jar(tree.target().resolve(name), path, new Manifest(), leftOut);
          classPath.add(name);
        } else if (Files.isRegularFile(path)) {
          classPath.add(path.toUri().toString());
        }
      }
      Manifest manifest = new Manifest();
      manifest.getMainAttributes().put(Attributes.Name.MAIN_CLASS, "firstamp.cli.Main");
      manifest.getMainAttributes().put(Attributes.Name.CLASS_PATH, String.join(" ", classPath));
      manifest.getMainAttributes().put(Attributes.Name.IMPLEMENTATION_VERSION, "of a test");
      jar(tree.target().resolve("firstamp-host.jar"), own, manifest, leftOut);
      Files.createFile(tree.target().resolve("launcher-built"));
      return tree;
    }

    private static void jar(Path to, Path from, Manifest manifest, String leftOut)
        throws IOException {
      manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
      try (JarOutputStream jar = new JarOutputStream(Files.newOutputStream(to), manifest);
          Stream<Path> all = Files.walk(from, FileVisitOption.FOLLOW_LINKS)) {
        for (Path each : all.filter(Files::isRegularFile).sorted().toList()) {
          if (!each.getFileName().toString().startsWith(leftOut)) {
            jar.putNextEntry(new ZipEntry(from.relativize(each).toString()));
            Files.copy(each, jar);
          }
        }
      }
    }

    Path target() {
      return root.resolve("host/target");
    }

    Path archive() {
      return target().resolve("quick-start.jsa");
    }

    String log() throws IOException {
      Path log = target().resolve("quick-start.log");
      return Files.exists(log) ? Files.readString(log) : "(no log)";
    }

    Start start(String... options) throws IOException, InterruptedException {
      Path out = root.resolve("out");
      Path err = root.resolve("err");
      ProcessBuilder builder =
          new ProcessBuilder(root.resolve("host/firstamp").toString(), "--version")
              .redirectOutput(out.toFile())
              .redirectError(err.toFile());
      builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
      builder.environment().put("XDG_CACHE_HOME", root.resolve("cache").toString());
      builder.environment().put("FIRSTAMP_JAVA_OPTIONS", String.join(" ", options));
      int exitCode = builder.start().waitFor();
      return new Start(exitCode, Files.readString(out), Files.readString(err));
    }

    /** Where the class that begins came from. */
    String sourceOfMain() throws IOException, InterruptedException {
      Path loaded = root.resolve("loaded");
      assertThat(start("-Xlog:class+load:file=" + loaded)).isEqualTo(Start.QUIET);
      return Files.readAllLines(loaded).stream()
          .filter(line -> line.contains("firstamp.cli.Main source:"))
          .findFirst()
          .orElseThrow()
          .replaceAll(".*source: ", "");
    }
  }
}
