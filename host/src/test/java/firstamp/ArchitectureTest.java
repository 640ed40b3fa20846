package firstamp;

import static com.tngtech.archunit.base.DescribedPredicate.describe;
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
import firstamp.protocol.values.TripLimits;
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
  private static final Map<String, List<String>> MAY_USE = PackageArrows.read();

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
            .collect(Collectors.groupingBy(c -> part(c.getPackageName()), Collectors.counting()));
    assertThat(classes)
        .allSatisfy(
            (part, count) ->
                assertThat(count).as("classes in %s", part).isLessThanOrEqualTo(CLASSES_AT_MOST));
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

  /** Nineteen numbers in a row are easily swapped. */
  @Test
  void limitsAreMadeByName() {
    noClasses()
        .that()
        .doNotHaveFullyQualifiedName(TripLimits.class.getName() + "$Builder")
        .should()
        .callConstructorWhere(
            describe(
                "makes limits by place",
                call -> call.getTargetOwner().isEquivalentTo(TripLimits.class)))
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
    return packageName.replaceFirst("^firstamp\\.", "");
  }
}
