package broodtide.cli;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Pattern;

/** Finds sentences that are too long to read with wet gloves on. */
final class LongSentences {
  /** Words that a sentence may have. */
  static final int MOST = 25;

  private static final Pattern BLANKS = Pattern.compile("\\s+");

  /** Points that end no sentence: of abbreviations, and of the titles of journals. */
  private static final Pattern ABBREVIATED =
      Pattern.compile(
          "(?<![\\w/])(al|e\\.g|i\\.e|[A-Z]|Am|Apic|Biol|Econ|Entomol|Exp|Math|Res|Sci|Vet)\\.");

  private static final Pattern END =
      Pattern.compile(
          "(?<=[.!?])[)\"'*]*\\s+(?=[\\p{Lu}\\d\"'`(\\[*-]|[^.:]{1,12}:)|(?<=[.!?])[)\"'*]*$");

  private static final Pattern WORD = Pattern.compile(".*\\p{L}.*");

  /** What separates one thing said from the next on a page of HTML. */
  private static final Pattern BLOCK =
      Pattern.compile(
          "</?(?:p|li|ul|ol|h\\d|t[dhr]|table|caption|button|label|div|section|summary|legend|option"
              + "|d[ltd]|text|title|desc|tspan|figcaption|nav|header|footer|main)\\b[^>]*>");

  private static final Pattern MARKUP =
      Pattern.compile("<(style|script)\\b.*?</\\1>|<[^>]*>", Pattern.DOTALL);

  /** How a citation begins; its list of authors and its title are as long as they are. */
  private static final String CITED = "Source: ";

  private static final Pattern BLANK_LINE = Pattern.compile("\\n\\s*\\n");

  /** Lines of a table or of an example. */
  private static final Pattern COLUMNS = Pattern.compile("^ {2,}\\S|\\S {2,}\\S");

  private LongSentences() {}

  /** The long sentences of one paragraph. */
  static List<String> of(String paragraph) {
    String text =
        ABBREVIATED.matcher(BLANKS.matcher(paragraph).replaceAll(" ").strip()).replaceAll("$1");
    List<String> out = new ArrayList<>();
    for (String sentence : END.split(text)) {
      long words =
          Arrays.stream(sentence.split(" ")).filter(w -> WORD.matcher(w).matches()).count();
      if (words > MOST && !sentence.startsWith(CITED)) {
        out.add(words + " words: " + sentence);
      }
    }
    return out;
  }

  /** Those of a page of HTML or of a picture. */
  static List<String> ofPage(String html) {
    List<String> out = new ArrayList<>();
    String shown = html.replaceAll("(?s)<(style|script)\\b.*?</\\1>", " ");
    for (String block : BLOCK.split(shown)) {
      out.addAll(of(MARKUP.matcher(block).replaceAll(" ")));
    }
    return out;
  }

  /** Those of what stands on a terminal: paragraphs, not the lines of a table. */
  static List<String> ofTerminal(String text) {
    List<String> out = new ArrayList<>();
    StringBuilder paragraph = new StringBuilder();
    for (String line : (text + "\n\n").split("\n", -1)) {
      if (line.isBlank() || COLUMNS.matcher(line).find()) {
        out.addAll(of(paragraph.toString()));
        paragraph.setLength(0);
      } else {
        paragraph.append(line).append('\n');
      }
    }
    return out;
  }

  /** Those of a page in Markdown: paragraphs, items and cells, without code. */
  static List<String> ofMarkdown(String text) {
    List<String> out = new ArrayList<>();
    String prose = text.replaceAll("(?s)```.*?```", "\n\n");
    for (String block : BLANK_LINE.split(prose)) {
      for (String part : block.split("\n(?=\\s*(?:[-*#|]|\\d+\\.)\\s?)|\n(?=#)|(?<=\\S) \\| ")) {
        out.addAll(of(part));
      }
    }
    return out;
  }
}
