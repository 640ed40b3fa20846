package firstamp;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.assertj.core.api.Assertions.assertThat;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import java.util.List;
import java.util.Map;
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

  /** What each package may use besides itself. */
  private static final Map<String, List<String>> MAY_USE =
      Map.ofEntries(
          Map.entry("model", List.of()),
          Map.entry("protocol", List.of()),
          Map.entry("sheet", List.of("model")),
          Map.entry("link", List.of("model")),
          Map.entry("trip", List.of("model")),
          Map.entry("log", List.of("model")),
          Map.entry("analysis", List.of("model")),
          Map.entry("locate", List.of("model")),
          Map.entry("emulate", List.of("model", "protocol")),
          Map.entry("sound", List.of("model")),
          Map.entry("supply", List.of("model")),
          Map.entry(
              "session",
              List.of(
                  "model",
                  "protocol",
                  "sheet",
                  "link",
                  "trip",
                  "log",
                  "analysis",
                  "locate",
                  "emulate",
                  "sound",
                  "supply")),
          Map.entry(
              "report", List.of("model", "sheet", "trip", "log", "analysis", "locate", "session")),
          Map.entry(
              "window",
              List.of(
                  "model",
                  "sheet",
                  "trip",
                  "log",
                  "analysis",
                  "locate",
                  "emulate",
                  "session",
                  "report",
                  "sound")),
          Map.entry(
              "cli",
              List.of(
                  "model",
                  "sheet",
                  "link",
                  "trip",
                  "log",
                  "analysis",
                  "locate",
                  "emulate",
                  "session",
                  "report",
                  "window",
                  "sound",
                  "supply")));

  @Test
  void seesTheHost() {
    assertThat(HOST.size()).isGreaterThan(100);
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
                  .map(other -> "firstamp." + other + "..")
                  .toList();
          noClasses()
              .that()
              .resideInAPackage("firstamp." + part + "..")
              .should()
              .dependOnClassesThat()
              .resideInAnyPackage(forbidden.toArray(String[]::new))
              .allowEmptyShould(List.of("locate", "report", "window", "supply").contains(part))
              .check(HOST);
        });
  }

  @Test
  void packagesFormNoCycle() {
    slices().matching("firstamp.(*)..").should().beFreeOfCycles().check(HOST);
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
    String[] parts = packageName.split("\\.");
    return parts.length > 1 ? parts[1] : packageName;
  }
}
