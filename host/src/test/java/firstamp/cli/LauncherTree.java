package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.file.FileVisitOption;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.jar.Attributes;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;

/**
 * A copy of the launcher with a jar that it does not have to build.
 *
 * @param root of everything
 */
record LauncherTree(Path root) {
  private static final Path LAUNCHER = Path.of("firstamp").toAbsolutePath();

  /** What a start printed. */
  record Start(int exitCode, String out, String err) {
    static final Start QUIET =
        new Start(0, "firstamp of a test\nrules 4, bench log schema 3\n", "");

    boolean prepared() {
      return exitCode == 0
          && out.equals(QUIET.out)
          && err.startsWith("firstamp: preparing quick starts")
          && err.lines().count() == 1;
    }
  }

  /** Leaves classes out whose name begins so. */
  static LauncherTree of(Path root, String leftOut) throws Exception {
    LauncherTree tree = new LauncherTree(root);
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
    return run(
        Map.of("FIRSTAMP_JAVA_OPTIONS", String.join(" ", options)),
        List.of(launcher().toString(), "--version"));
  }

  Path launcher() {
    return root.resolve("host/firstamp");
  }

  /** Runs a program in an environment that has these variables and those that a start needs. */
  Start run(Map<String, String> environment, List<String> command)
      throws IOException, InterruptedException {
    Path out = root.resolve("out");
    Path err = root.resolve("err");
    ProcessBuilder builder =
        new ProcessBuilder(command)
            .directory(root.toFile())
            .redirectOutput(out.toFile())
            .redirectError(err.toFile());
    builder.environment().put("JAVA_HOME", System.getProperty("java.home"));
    builder.environment().put("XDG_CACHE_HOME", root.resolve("cache").toString());
    builder.environment().putAll(environment);
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
