package firstamp;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/**
 * The house rules. Methods, not fields: with some runners a violated rule in a field passes
 * silently.
 */
class ArchitectureTest {
  private static final JavaClasses HOST =
      new ClassFileImporter()
          .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
          .importPackages("firstamp");

  /** What each package may use apart from itself. */
  private static final Map<String, List<String>> MAY_USE =
      Map.ofEntries(
          allow("protocol"),
          allow("model", "model.samples", "model.text"),
          allow("model.text"),
          allow("sheet", "model", "model.limits", "model.samples", "model.text"),
          allow("link", "model", "model.text"),
          allow("alarm", "model", "model.limits", "model.samples", "model.text"),
          allow("log", "model", "log.code", "log.stream", "model.samples", "model.text"),
          allow("log.code", "model.samples"),
          allow("log.stream", "model", "log.code", "model.samples"),
          allow("analysis.statistics", "model.samples"),
          allow("analysis.spectrum", "model", "model.samples"),
          allow("analysis.calibrate", "analysis.statistics", "model.samples"),
          allow(
              "analysis.figures",
              "model",
              "analysis.spectrum",
              "analysis.statistics",
              "model.samples",
              "model.text"),
          allow(
              "account",
              "model",
              "alarm",
              "analysis.figures",
              "analysis.spectrum",
              "analysis.statistics",
              "model.samples",
              "model.text"),
          allow("locate", "model", "locate.signal", "locate.wire"),
          allow("locate.odds"),
          allow("locate.signal", "model", "model.text", "locate.odds", "model.samples"),
          allow("locate.wire", "model.text", "locate.odds"),
          allow(
              "emulate",
              "model",
              "protocol",
              "emulate.box",
              "model.limits",
              "model.samples",
              "model.text"),
          allow("emulate.box", "protocol", "model.samples"),
          allow("sound", "model"),
          allow("supply", "model"),
          allow(
              "report",
              "account",
              "alarm",
              "analysis.figures",
              "analysis.statistics",
              "locate",
              "log",
              "model",
              "sheet",
              "study",
              "model.samples"),
          allow(
              "window",
              "app",
              "bench",
              "locate.wire",
              "model",
              "window.frame",
              "window.page",
              "window.pages",
              "window.strips",
              "window.watch",
              "window.widgets",
              "window.words"),
          allow(
              "cli",
              "app",
              "bench",
              "cli.command",
              "cli.output",
              "cli.run",
              "emulate",
              "log",
              "model",
              "pipeline",
              "run",
              "run.questions",
              "run.talk",
              "sound",
              "study",
              "window"),
          allow(
              "cli.command",
              "account",
              "alarm",
              "analysis.calibrate",
              "analysis.figures",
              "analysis.statistics",
              "cli.output",
              "cli.run",
              "emulate",
              "emulate.box",
              "link",
              "locate",
              "locate.signal",
              "locate.wire",
              "log",
              "model",
              "pipeline",
              "report",
              "run",
              "run.calibration",
              "run.questions",
              "run.talk",
              "sheet",
              "sound",
              "study",
              "supply",
              "model.limits",
              "model.samples",
              "model.text"),
          allow(
              "cli.output",
              "account",
              "alarm",
              "analysis.calibrate",
              "analysis.figures",
              "locate.odds",
              "locate.signal",
              "locate.wire",
              "log",
              "log.stream",
              "model",
              "pipeline",
              "run",
              "run.calibration",
              "sheet",
              "study",
              "model.samples",
              "model.text"),
          allow(
              "cli.run",
              "account",
              "alarm",
              "analysis.figures",
              "app",
              "bench",
              "cli.output",
              "link",
              "locate.wire",
              "log",
              "model",
              "pipeline",
              "run",
              "run.questions",
              "run.talk",
              "sheet",
              "sound",
              "study",
              "supply",
              "window",
              "window.page",
              "model.text"),
          allow(
              "bench",
              "account",
              "alarm",
              "analysis.figures",
              "log",
              "model",
              "pipeline",
              "run",
              "run.questions",
              "run.talk",
              "sheet",
              "study",
              "trend",
              "model.samples",
              "model.text"),
          allow(
              "pipeline",
              "alarm",
              "analysis.figures",
              "analysis.spectrum",
              "model",
              "sheet",
              "protocol",
              "model.limits",
              "model.samples",
              "model.text"),
          allow(
              "run",
              "analysis.figures",
              "emulate",
              "link",
              "locate",
              "locate.signal",
              "locate.wire",
              "log",
              "model",
              "pipeline",
              "run.questions",
              "run.talk",
              "sound",
              "supply",
              "protocol",
              "model.samples",
              "model.text"),
          allow(
              "run.calibration",
              "analysis.calibrate",
              "analysis.figures",
              "model",
              "pipeline",
              "run.talk",
              "protocol",
              "model.samples",
              "model.text"),
          allow("run.questions", "log", "model", "model.text"),
          allow("run.talk", "model", "pipeline", "protocol", "model.samples", "model.text"),
          allow(
              "study",
              "account",
              "analysis.figures",
              "analysis.statistics",
              "locate",
              "locate.signal",
              "locate.wire",
              "log",
              "log.stream",
              "model",
              "pipeline",
              "sheet",
              "trend",
              "protocol",
              "model.samples",
              "model.text"),
          allow("trend", "log", "log.stream", "model", "pipeline", "model.samples"),
          allow(
              "app",
              "account",
              "analysis.calibrate",
              "bench",
              "emulate",
              "locate",
              "locate.wire",
              "log",
              "model",
              "pipeline",
              "report",
              "run",
              "run.calibration",
              "run.questions",
              "run.talk",
              "sheet",
              "sound",
              "study",
              "window.words",
              "model.samples",
              "model.text"),
          allow(
              "window.frame",
              "app",
              "bench",
              "model",
              "window.page",
              "window.pages",
              "window.present",
              "window.strips",
              "window.watch",
              "window.widgets",
              "window.words"),
          allow(
              "window.page",
              "app",
              "bench",
              "model",
              "window.present",
              "window.widgets",
              "window.words"),
          allow(
              "window.pages",
              "account",
              "analysis.calibrate",
              "app",
              "bench",
              "emulate",
              "locate.odds",
              "locate.signal",
              "locate.wire",
              "log",
              "model",
              "run",
              "run.questions",
              "sheet",
              "study",
              "trend",
              "window.page",
              "window.present",
              "window.strips",
              "window.watch",
              "window.widgets",
              "window.words",
              "model.text"),
          allow(
              "window.present",
              "account",
              "alarm",
              "analysis.calibrate",
              "analysis.figures",
              "app",
              "bench",
              "locate.odds",
              "locate.signal",
              "locate.wire",
              "log",
              "model",
              "pipeline",
              "run",
              "run.calibration",
              "run.questions",
              "sheet",
              "study",
              "trend",
              "window.widgets",
              "window.words",
              "model.limits",
              "model.samples",
              "model.text"),
          allow(
              "window.strips",
              "bench",
              "model",
              "run",
              "study",
              "trend",
              "window.present",
              "window.widgets",
              "window.words"),
          allow(
              "window.watch",
              "app",
              "bench",
              "locate",
              "model",
              "run",
              "window.page",
              "window.present",
              "window.strips",
              "window.widgets",
              "window.words",
              "model.text"),
          allow("window.widgets", "app", "locate.signal", "window.words"),
          allow("window.words", "account", "alarm", "model", "sheet", "model.text"),
          allow("model.limits", "model", "model.samples", "model.text"),
          allow("model.samples"));

  /** Packages that hold more than is good, with what they hold at most: none may grow. */
  private static final Map<String, Integer> STILL_OVER = Map.of("emulate", 56);

  private static final int CLASSES_AT_MOST = 32;

  /** Pages lead to each other as the person goes: ready, watch, verdict, and back. */
  private static final List<String> PAGES =
      Stream.of("FormPage", "ReadyPage", "VerdictPage", "WatchPage")
          .map(page -> "firstamp.window.pages." + page)
          .toList();

  @Test
  void seesTheHost() {
    assertThat(HOST.size()).isGreaterThan(1000);
    assertThat(HOST.stream().map(c -> part(c.getPackageName())).distinct())
        .as("every package has its entry here")
        .allMatch(MAY_USE::containsKey);
  }

  @Test
  void packagesUseOnlyWhatTheyMay() {
    MAY_USE.forEach(
        (part, allowed) -> {
          List<String> forbidden =
              MAY_USE.keySet().stream()
                  .filter(other -> !other.equals(part) && !allowed.contains(other))
                  .map(other -> "firstamp." + other)
                  .toList();
          noClasses()
              .that()
              .resideInAPackage("firstamp." + part)
              .should()
              .dependOnClassesThat()
              .resideInAnyPackage(forbidden.toArray(String[]::new))
              .check(HOST);
        });
  }

  @Test
  void packagesFormNoCycle() {
    slices().matching("firstamp.(**)").should().beFreeOfCycles().check(HOST);
  }

  @Test
  void noMoreThanThreeClassesGoInACircle() {
    assertThat(ClassCircles.in(HOST))
        .filteredOn(circle -> circle.size() > 3)
        .filteredOn(circle -> !circle.equals(PAGES))
        .isEmpty();
  }

  @Test
  void findsACircle() {
    Map<String, List<String>> uses =
        Map.of(
            "a",
            List.of("b", "e"),
            "b",
            List.of("c"),
            "c",
            List.of("d"),
            "d",
            List.of("a"),
            "e",
            List.of("f"),
            "f",
            List.of());
    assertThat(ClassCircles.in(uses)).containsExactly(List.of("a", "b", "c", "d"));
  }

  @Test
  void packagesAreSmall() {
    Map<String, Long> classes =
        HOST.stream()
            .filter(JavaClass::isTopLevelClass)
            .filter(c -> !c.getSimpleName().equals("package-info"))
            .filter(c -> !part(c.getPackageName()).equals("protocol"))
            .collect(Collectors.groupingBy(c -> part(c.getPackageName()), Collectors.counting()));
    assertThat(classes)
        .allSatisfy(
            (part, count) ->
                assertThat(count)
                    .as("classes in %s", part)
                    .isLessThanOrEqualTo(STILL_OVER.getOrDefault(part, CLASSES_AT_MOST)));
  }

  @Test
  void onlyLinkSeesTheSerialLibrary() {
    only("link", "com.fazecast..");
  }

  @Test
  void onlySoundSeesTheSoundDevice() {
    only("sound", "javax.sound..");
  }

  @Test
  void onlyTheLogSeesJdbc() {
    only("log", "java.sql..", "javax.sql..", "org.sqlite..");
  }

  @Test
  void onlyTheWindowSeesSwing() {
    only("window", "javax.swing..", "com.formdev..");
  }

  @Test
  void onlyWindowAndReportSeeTheChartLibrary() {
    noClasses()
        .that()
        .resideOutsideOfPackages("firstamp.window..", "firstamp.report..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage("org.jfree..")
        .check(HOST);
  }

  @Test
  void onlyOneClassAsksForTheTime() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName("firstamp.model.SystemTime")
        .should()
        .callMethod(System.class, "currentTimeMillis")
        .orShould()
        .callMethod(System.class, "nanoTime")
        .orShould()
        .callMethod(java.time.Instant.class, "now")
        .orShould()
        .callMethod(java.time.LocalDateTime.class, "now")
        .check(HOST);
  }

  @Test
  void onlyTheCommandLinePrints() {
    noClasses()
        .that()
        .resideOutsideOfPackage("firstamp.cli..")
        .should()
        .accessField(System.class, "out")
        .orShould()
        .accessField(System.class, "err")
        .check(HOST);
  }

  @Test
  void nothingStaticChanges() {
    fields()
        .that()
        .areDeclaredInClassesThat()
        .resideInAPackage("firstamp..")
        .and()
        .areStatic()
        .should()
        .beFinal()
        .check(HOST);
  }

  @Test
  void classesAreFinalUnlessMadeToBeExtended() {
    classes()
        .that()
        .resideInAPackage("firstamp..")
        .and()
        .areTopLevelClasses()
        .and()
        .areNotInterfaces()
        .and()
        .areNotEnums()
        .and()
        .doNotHaveModifier(JavaModifier.ABSTRACT)
        .and()
        .haveSimpleNameNotEndingWith("package-info")
        .and()
        .doNotHaveSimpleName("ForwardingChainListener")
        .should()
        .haveModifier(JavaModifier.FINAL)
        .check(HOST);
  }

  private static void only(String part, String... libraries) {
    noClasses()
        .that()
        .resideOutsideOfPackage("firstamp." + part + "..")
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(libraries)
        .check(HOST);
  }

  private static String part(String packageName) {
    return packageName.startsWith("firstamp.protocol")
        ? "protocol"
        : packageName.replaceFirst("^firstamp\\.", "");
  }

  private static Map.Entry<String, List<String>> allow(String part, String... others) {
    return Map.entry(part, List.of(others));
  }
}
