package firstamp.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.Statement;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The launcher as cron, services and containers start it: their locale, home and output. */
@Timeout(value = 180, unit = TimeUnit.SECONDS)
class LauncherEnvironmentTest {
  private static final String DEMO =
      " demo --headless --speed max --for 300ms --no-sound --countdown 0 ";

  /** UTF-8 of "Draht ü, провод" in octal: the script holds nothing but ASCII. */
  private static final String LABEL =
      "Draht \\303\\274, \\320\\277\\321\\200\\320\\276\\320\\262\\320\\276\\320\\264";

  private static final String LABEL_HEX = "447261687420C3BC2C20D0BFD180D0BED0B2D0BED0B4";

  @TempDir static Path folder;
  private static LauncherTree tree;

  @BeforeAll
  static void build() throws Exception {
    assumeTrue(File.separatorChar == '/', "the launcher of this system is another one");
    tree = LauncherTree.of(folder.resolve("tree"), "nothing");
    assertThat(tree.start()).matches(LauncherTree.Start::prepared);
  }

  /** Runs lines of a shell; {@code $F} is the launcher, {@code $D} an empty folder. */
  private static LauncherTree.Start shell(Path work, Map<String, String> variables, String... lines)
      throws Exception {
    Files.createDirectories(work);
    Path script = work.resolve("script.sh");
    Files.writeString(script, String.join("\n", lines) + "\n", StandardCharsets.US_ASCII);
    Map<String, String> environment = new TreeMap<>(variables);
    environment.put("F", tree.launcher().toString());
    environment.put("D", work.toString());
    return tree.run(environment, List.of("sh", script.toString()));
  }

  private static String text(Path log, String query) throws Exception {
    try (Connection connection = DriverManager.getConnection("jdbc:sqlite:" + log);
        Statement statement = connection.createStatement();
        ResultSet row = statement.executeQuery(query)) {
      assertThat(row.next()).isTrue();
      return row.getString(1);
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"LC_ALL=C", "LC_ALL=POSIX", "LC_ALL=xx_XX.UTF-8", "LANG=C LC_ALL="})
  void noLocaleDestroysALetter(String locale) throws Exception {
    Path work = folder.resolve(locale.replaceAll("[^A-Za-z]", ""));
    LauncherTree.Start start =
        shell(
            work,
            Map.of(),
            "unset LC_CTYPE LANG",
            "export " + locale,
            "label=$(printf '" + LABEL + "')",
            "log=$D/$(printf 'B\\303\\274cher \\320\\266').db",
            "\"$F\"" + DEMO + "--label \"$label\" --log \"$log\" >$D/first 2>&1 || exit",
            "mv \"$log\" $D/plain.db && cp $D/plain.db \"$log\"",
            "\"$F\" list --log \"$log\"");
    assertThat(start.exitCode()).as("%s%s", start.err(), start.out()).isZero();
    assertThat(text(work.resolve("plain.db"), "SELECT hex(label) FROM power_up"))
        .isEqualTo(LABEL_HEX);
    assertThat(start.out()).contains("Draht ü, провод");
  }

  @Test
  void homeAndTheDataFolderDecideWhichBenchLogIsWritten() throws Exception {
    Path work = folder.resolve("home");
    LauncherTree.Start start =
        shell(
            work,
            Map.of(),
            "unset XDG_DATA_HOME",
            "\"$F\"" + DEMO + "--log $D/one.db >$D/first 2>&1 || exit",
            "HOME=$D/a \"$F\" import $D/one.db",
            "HOME=$D/b XDG_DATA_HOME=$D/c \"$F\" import $D/one.db",
            "HOME=$D/e XDG_DATA_HOME=relative \"$F\" import $D/one.db");
    assertThat(start.exitCode()).as(start.err()).isZero();
    assertThat(work.resolve("a/.local/share/firstamp/bench.db")).exists();
    assertThat(work.resolve("c/firstamp/bench.db")).exists();
    assertThat(work.resolve("b")).doesNotExist();
    assertThat(work.resolve("e/.local/share/firstamp/bench.db")).exists();
  }

  /** BSD sysexits (from memory): EX_IOERR is 74. */
  @Test
  void outputThatCannotBeWrittenIsAnInputOutputError() throws Exception {
    assumeTrue(Files.exists(Path.of("/dev/full")), "this system has no full device");
    Path work = folder.resolve("output");
    LauncherTree.Start start =
        shell(
            work,
            Map.of(),
            "\"$F\"" + DEMO + "--json --log $D/one.db >/dev/full 2>$D/demo.err; echo demo $?",
            "\"$F\" list --log $D/one.db >/dev/full 2>$D/list.err; echo list $?",
            "\"$F\" show last --json --log $D/one.db >/dev/full 2>$D/show.err; echo show $?",
            "\"$F\" --help >/dev/full 2>$D/help.err; echo help $?",
            "\"$F\" list --json --log $D/one.db");
    assertThat(start.out())
        .as(start.err())
        .contains("demo 74", "list 74", "show 74", "help 74")
        .contains("\"outcome\":\"normal\"");
    for (String name : List.of("demo", "list", "show", "help")) {
      assertThat(Files.readString(work.resolve(name + ".err")))
          .contains("standard output cannot be written: no room on the disk.")
          .doesNotContain("Exception");
    }
    assertThat(Files.readString(work.resolve("demo.err"))).contains("the log is written");
    assertThat(text(work.resolve("one.db"), "SELECT state FROM power_up")).isEqualTo("repacked");
  }

  @Test
  void aReaderThatHasGoneIsToldAndThePowerUpIsKept() throws Exception {
    Path work = folder.resolve("pipe");
    LauncherTree.Start start =
        shell(
            work,
            Map.of(),
            "exec 3>&1",
            "{ \"$F\"" + DEMO + "--readings --log $D/one.db 2>$D/err; echo demo $? >&3; } | true");
    assertThat(start.out()).as(start.err()).contains("demo 74");
    assertThat(Files.readString(work.resolve("err")))
        .contains("standard output cannot be written: the program that reads it has ended.");
    assertThat(text(work.resolve("one.db"), "SELECT state FROM power_up")).isEqualTo("repacked");
  }
}
