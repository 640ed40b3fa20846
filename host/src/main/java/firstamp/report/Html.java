package firstamp.report;

import java.util.List;

/** Writes HTML; every text goes through {@link #escape}. */
final class Html {
  private final StringBuilder page = new StringBuilder();

  /** Text that is valid in an element and in a quoted attribute. */
  static String escape(String text) {
    return legible(text)
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }

  /** The text with a substitute for each character that cannot be shown; null gives nothing. */
  static String legible(String text) {
    if (text == null) {
      return "";
    }
    StringBuilder legible = new StringBuilder(text.length());
    text.codePoints().forEach(code -> legible.appendCodePoint(readable(code) ? code : 0xFFFD));
    return legible.toString();
  }

  /** No control characters, no halves of pairs, nothing that turns the writing direction. */
  private static boolean readable(int code) {
    return code == '\n'
        || code == '\t'
        || code >= 0x20
            && !(code >= 0x7F && code <= 0x9F)
            && !(code >= 0xD800 && code <= 0xDFFF)
            && !(code >= 0x202A && code <= 0x202E)
            && !(code >= 0x2066 && code <= 0x2069)
            && code != 0xFFFE
            && code != 0xFFFF;
  }

  /** Markup that is known to be safe. */
  Html raw(String markup) {
    page.append(markup);
    return this;
  }

  Html heading(String text) {
    return element("h2", text);
  }

  Html paragraph(String text) {
    return element("p", text);
  }

  /** An element that holds one text. */
  Html element(String tag, String text) {
    page.append('<').append(tag).append('>').append(escape(text));
    page.append("</").append(tag).append(">\n");
    return this;
  }

  Html list(List<String> texts) {
    page.append("<ul>\n");
    texts.forEach(text -> element("li", text));
    page.append("</ul>\n");
    return this;
  }

  Html table(List<String> columns, List<List<String>> rows) {
    page.append("<table>\n<thead><tr>");
    columns.forEach(
        column -> page.append("<th scope=\"col\">").append(escape(column)).append("</th>"));
    page.append("</tr></thead>\n<tbody>\n");
    for (List<String> row : rows) {
      page.append("<tr>");
      row.forEach(cell -> page.append("<td>").append(escape(cell)).append("</td>"));
      page.append("</tr>\n");
    }
    page.append("</tbody></table>\n");
    return this;
  }

  /** A picture with its words; the alternative text is the caption. */
  Html figure(String svg, String caption) {
    page.append("<figure>").append(svg).append("\n<figcaption>").append(escape(caption));
    page.append("</figcaption></figure>\n");
    return this;
  }

  @Override
  public String toString() {
    return page.toString();
  }
}
