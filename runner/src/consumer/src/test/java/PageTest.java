import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** The programs of the page print a colony, its winter loss and the best plan. */
class PageTest {
  interface Program {
    void run(String[] arguments) throws Exception;
  }

  private static String printed(Program program, String argument) throws Exception {
    PrintStream before = System.out;
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    System.setOut(new PrintStream(out, true, StandardCharsets.UTF_8));
    try {
      program.run(new String[] {argument});
    } finally {
      System.setOut(before);
    }
    return out.toString(StandardCharsets.UTF_8);
  }

  @Test
  void washes() throws Exception {
    String said = printed(Program1::main, System.getProperty("washes"));
    assertTrue(said.matches("(?s)Alder Row 1: 0[.]\\d+; .+Alder Row 2: 0[.]\\d+; .+"), said);
  }

  @Test
  void study() throws Exception {
    String said = printed(Program2::main, "late-wash");
    assertTrue(said.matches("Quince Row 1: 0[.]\\d+; .+\\R"), said);
  }
}
