package broodtide.table;

import broodtide.forms.BadInput;
import broodtide.forms.Fault;
import broodtide.forms.Source;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;

/**
 * The text of a table file: read within a bound, decoded, without byte order marks.
 *
 * @param text the characters
 * @param notes what the user should know of how they were read
 */
public record SheetText(String text, List<String> notes) {
  /** Most bytes or characters that a table file may have. */
  public static final int LARGEST = 50_000_000;

  private static final Charset WINDOWS = Charset.forName("windows-1252");

  public static SheetText read(InputStream in, String file) throws IOException {
    byte[] bytes = in.readNBytes(LARGEST + 1);
    if (bytes.length > LARGEST) {
      throw tooLarge(file);
    }
    if (starts(bytes, 'P', 'K', 3, 4) || starts(bytes, 0xD0, 0xCF, 0x11, 0xE0)) {
      throw BadInput.of(
          Fault.of(file, "is a spreadsheet workbook, not text; save the sheet as CSV first"));
    }
    if (starts(bytes, 0xFF, 0xFE)) {
      return of(new String(bytes, StandardCharsets.UTF_16LE), file, List.of());
    }
    if (starts(bytes, 0xFE, 0xFF)) {
      return of(new String(bytes, StandardCharsets.UTF_16BE), file, List.of());
    }
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
      return of(text, file, List.of());
    } catch (CharacterCodingException e) {
      String note =
          "The file is not UTF-8; it was read as Windows-1252, so look whether names with accents"
              + " are right.";
      return of(new String(bytes, WINDOWS), file, List.of(note));
    }
  }

  public static SheetText read(Reader in, String file) throws IOException {
    StringBuilder text = new StringBuilder();
    char[] buffer = new char[1 << 16];
    int got = in.read(buffer);
    while (got >= 0) {
      text.append(buffer, 0, got);
      if (text.length() > LARGEST) {
        throw tooLarge(file);
      }
      got = in.read(buffer);
    }
    return of(text.toString(), file, List.of());
  }

  private static SheetText of(String text, String file, List<String> notes) {
    int nul = text.indexOf('\0');
    if (nul >= 0) {
      // A letter more, so that a line that has just begun counts.
      int line = (int) (text.substring(0, nul) + '.').lines().count();
      throw BadInput.of(
          new Fault(
              file,
              line,
              0,
              "",
              null,
              "holds the character NUL and is not a text file; save the table as CSV"));
    }
    return new SheetText(Source.withoutMarks(text), notes);
  }

  private static BadInput tooLarge(String file) {
    return BadInput.of(
        Fault.of(
            file, "is larger than " + LARGEST / 1_000_000 + " MB; split it by colony or by year"));
  }

  private static boolean starts(byte[] bytes, int... mark) {
    if (bytes.length < mark.length) {
      return false;
    }
    for (int i = 0; i < mark.length; i++) {
      if ((bytes[i] & 0xFF) != mark[i]) {
        return false;
      }
    }
    return true;
  }
}
