package broodtide.forms;

import broodtide.forms.Node.Spot;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.io.JsonEOFException;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Says in plain words why a text is not JSON and how to mend it. */
final class SyntaxWords {
  private static final Pattern UNEXPECTED =
      Pattern.compile("Unexpected character \\('(.)' \\(code \\d+", Pattern.DOTALL);
  private static final Pattern TOKEN = Pattern.compile("token '([^']{0,60})");

  private static final String NUMBERS =
      "numbers are written like 12, -3 or 0.5: no + sign, no zero in front, a point and not a"
          + " comma, a digit on both sides of the point";

  private SyntaxWords() {}

  /**
   * The reason in words.
   *
   * @param open the innermost bracket that is not closed yet, if any
   */
  static String of(JsonProcessingException e, String text, @Nullable Spot open) {
    String said = String.valueOf(e.getOriginalMessage());
    if (e instanceof JsonEOFException || said.contains("end-of-input")) {
      return open == null
          ? "the file ends too early; close the last quote"
          : "the file ends too early: the bracket opened on line "
              + open.line()
              + " is not closed, or a quote or comment is not";
    }
    if (e instanceof StreamConstraintsException) {
      return "a number, name or text here is longer than any needs to be; shorten it";
    }
    Matcher unexpected = UNEXPECTED.matcher(said);
    if (unexpected.find()) {
      return unexpected(unexpected.group(1).charAt(0), said, text, e.getLocation());
    }
    Matcher token = TOKEN.matcher(said);
    if (token.find()) {
      return Fault.quoted(token.group(1))
          + " is no JSON value; write a plain number, true, false, or text in double quotes";
    }
    if (said.contains("unquoted character")) {
      return "text may not run over the end of a line or hold control characters; close the"
          + " double quote on its own line";
    }
    if (said.contains("character escape")) {
      return "a backslash in text is written twice: \\\\";
    }
    if (said.contains("numeric value")) {
      return NUMBERS;
    }
    if (said.contains("close marker")) {
      return open == null
          ? "a bracket here closes nothing; remove it"
          : "the bracket opened on line " + open.line() + " must be closed first, by its own kind";
    }
    return "this is not JSON: " + said;
  }

  private static String unexpected(
      char found, String said, String text, @Nullable JsonLocation at) {
    char before = before(text, found, at);
    if (said.contains("Decimal point") || found == '+' || found == '.') {
      return NUMBERS;
    }
    if (found == '}' || found == ']') {
      return before == ','
          ? "the comma before this " + found + " is one too many; remove it"
          : "this " + found + " closes nothing, or a value is missing before it";
    }
    if (found == '\'') {
      return "use double quotes \" around names and text, not '";
    }
    if (said.contains("comma")) {
      return "a comma is missing before "
          + found
          + ", or the bracket before it is not closed; numbers have a decimal point";
    }
    if (said.contains("colon")) {
      return "a colon : is missing between the field's name and its value";
    }
    if (said.contains("field name")) {
      return before == ','
          ? "a field's name in double quotes must follow the comma, not " + found
          : "a field's name must stand in double quotes, not begin with " + found;
    }
    return "a value cannot begin with " + found + "; text stands in double quotes";
  }

  /** The last visible character before the one found; a blank when there is none. */
  private static char before(String text, char found, @Nullable JsonLocation at) {
    int i = at == null ? 0 : (int) Math.min(text.length(), Math.max(0, at.getCharOffset() + 1));
    i = i == 0 ? -1 : text.lastIndexOf(found, i - 1) - 1;
    while (i >= 0 && Character.isWhitespace(text.charAt(i))) {
      i--;
    }
    return i < 0 ? ' ' : text.charAt(i);
  }
}
