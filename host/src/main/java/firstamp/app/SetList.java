package firstamp.app;

import firstamp.log.PowerUpEntry;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Puts the sets of the first screen together from a log's power-ups and the sheets beside it. */
public final class SetList {
  private SetList() {}

  /**
   * A sheet as it lies on the shelf.
   *
   * @param setName in it
   * @param json its text
   * @param writtenEpochMs when
   */
  public record Sheet(String setName, String json, long writtenEpochMs) {}

  /**
   * The real sets, most recently used first; then what was begun; then practice that was brought
   * into the bench's log, set by set; the emulated ones last.
   *
   * @param log of the bench
   * @param entries its power-ups, oldest first
   * @param ready sheets that are ready
   * @param begun sheets that were begun
   * @param emulatedName what the last entry is called
   * @param emulatedLog where the emulated sets are kept
   * @param emulated power-ups in it, oldest first
   */
  public static List<SetEntry> of(
      Path log,
      List<PowerUpEntry> entries,
      List<Sheet> ready,
      List<Sheet> begun,
      String emulatedName,
      Path emulatedLog,
      List<PowerUpEntry> emulated) {
    Map<String, List<PowerUpEntry>> bySet = new LinkedHashMap<>();
    for (PowerUpEntry entry : entries) {
      if (!isEmulated(entry)) {
        bySet.computeIfAbsent(entry.setName(), name -> new ArrayList<>()).add(0, entry);
      }
    }
    Map<String, Sheet> sheets = new LinkedHashMap<>();
    ready.forEach(sheet -> sheets.put(sheet.setName(), sheet));
    sheets.keySet().forEach(name -> bySet.computeIfAbsent(name, none -> new ArrayList<>()));
    List<SetEntry> sets = new ArrayList<>();
    bySet.forEach((name, powerUps) -> sets.add(real(log, name, powerUps, sheets.get(name))));
    sets.sort(Comparator.comparingLong(SetEntry::lastEpochMs).reversed());
    List<Sheet> open = new ArrayList<>(begun);
    open.sort(Comparator.comparingLong(Sheet::writtenEpochMs).reversed());
    for (Sheet sheet : open) {
      sets.add(
          new SetEntry(
              sheet.setName(),
              SetEntry.Kind.BEGUN,
              null,
              sheet.json(),
              log,
              List.of(),
              sheet.writtenEpochMs()));
    }
    if (!log.equals(emulatedLog)) {
      sets.addAll(broughtIn(log, entries, emulatedName));
    }
    List<PowerUpEntry> shown = new ArrayList<>();
    emulated.stream().filter(SetList::isEmulated).forEach(entry -> shown.add(0, entry));
    sets.add(
        new SetEntry(
            emulatedName, SetEntry.Kind.EMULATED, null, null, emulatedLog, shown, last(shown)));
    return sets;
  }

  /** Logs of emulated sets that were imported: each under its name, marked as emulated. */
  private static List<SetEntry> broughtIn(
      Path log, List<PowerUpEntry> entries, String emulatedName) {
    Map<String, List<PowerUpEntry>> bySet = new LinkedHashMap<>();
    for (PowerUpEntry entry : entries) {
      if (isEmulated(entry)) {
        bySet.computeIfAbsent(entry.setName(), name -> new ArrayList<>()).add(0, entry);
      }
    }
    List<SetEntry> sets = new ArrayList<>();
    bySet.forEach(
        (name, powerUps) ->
            sets.add(
                new SetEntry(
                    emulatedName + ": " + name,
                    SetEntry.Kind.EMULATED,
                    null,
                    null,
                    log,
                    powerUps,
                    last(powerUps))));
    return sets;
  }

  private static SetEntry real(Path log, String name, List<PowerUpEntry> powerUps, Sheet sheet) {
    long touched = Math.max(last(powerUps), sheet == null ? 0 : sheet.writtenEpochMs());
    return new SetEntry(
        name,
        SetEntry.Kind.REAL,
        sheet == null ? null : sheet.json(),
        null,
        log,
        powerUps,
        touched);
  }

  private static long last(List<PowerUpEntry> newestFirst) {
    return newestFirst.isEmpty() ? 0 : newestFirst.get(0).startedEpochMs();
  }

  /** Whether nothing real was switched. */
  public static boolean isEmulated(PowerUpEntry entry) {
    return entry.probeKind() != null && entry.probeKind().startsWith("emulated");
  }
}
