package firstamp.window.pages;

import firstamp.app.SheetEntries;
import firstamp.model.RuleId;
import firstamp.sheet.SheetField;
import firstamp.window.words.Words;
import java.util.ArrayList;
import java.util.List;

/** Every entry of the job sheet in the sections of the form, with the keys of its words. */
public final class FormSections {
  private FormSections() {}

  /**
   * A section.
   *
   * @param id key of its words: {@code section.ID}
   * @param entries in their order; empty for the rules, which are chosen one by one
   */
  public record Section(String id, List<Entry> entries) {}

  /**
   * An entry.
   *
   * @param place in the sheet, as {@link SheetEntries} names it
   * @param wordsKey key of its words
   * @param field what may stand there
   */
  public record Entry(String place, String wordsKey, SheetField field) {}

  static final String RULES = "rules";

  /** What the form calls an entry; one that it does not show is called as on the sheet. */
  static String name(Words words, String place) {
    return all().stream()
        .flatMap(section -> section.entries().stream())
        .filter(entry -> entry.place().equals(place))
        .findFirst()
        .map(entry -> words.getOr(entry.wordsKey(), place))
        .orElse(place);
  }

  public static List<Section> all() {
    List<Section> sections = new ArrayList<>();
    sections.add(section("set", "set", SheetField.Part.SET));
    sections.add(section("supply", "supply", SheetField.Part.SUPPLY));
    sections.add(section("limits", "limits", SheetField.Part.LIMITS));
    for (int input = 1; input <= 3; input++) {
      sections.add(section("rail" + input, "rail", SheetField.Part.RAIL));
    }
    sections.add(section("levels", "levels", SheetField.Part.LEVELS));
    sections.add(new Section(RULES, List.of()));
    return sections;
  }

  private static Section section(String id, String wordsPart, SheetField.Part part) {
    List<Entry> entries = new ArrayList<>();
    for (SheetField field : SheetField.of(part)) {
      // The clip of a rail is its section.
      if (!(part == SheetField.Part.RAIL && field.key().equals("input"))) {
        entries.add(
            new Entry(id + "." + field.key(), "field." + wordsPart + "." + field.key(), field));
      }
    }
    return new Section(id, entries);
  }

  /** The entries of one rule. */
  public static List<Entry> of(RuleId rule) {
    List<Entry> entries = new ArrayList<>();
    for (SheetField field : SheetField.of(rule)) {
      entries.add(
          new Entry("rules." + rule.id() + "." + field.key(), "field.rule." + field.key(), field));
    }
    return entries;
  }

  /** Number of the section that a place belongs to; -1 = none. */
  static int sectionOf(String place) {
    List<Section> sections = all();
    for (int k = 0; k < sections.size(); k++) {
      if (place.equals(sections.get(k).id()) || place.startsWith(sections.get(k).id() + ".")) {
        return k;
      }
    }
    return -1;
  }
}
