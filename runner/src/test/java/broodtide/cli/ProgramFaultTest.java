package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.terminal.Terminal;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.Writer;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;

/** A fault of the program says so in one line that can be sent to those who mend it. */
class ProgramFaultTest {
  private static final String[] WASH = {
    "wash", "7", "--bees", "300", "--date", "2026-08-24", "--climate", "cool-maritime"
  };

  /** A clock that fails, which no input can bring about. */
  private static Clock broken(Supplier<Instant> fault) {
    return new Clock() {
      @Override
      public ZoneId getZone() {
        return ZoneOffset.UTC;
      }

      @Override
      public Clock withZone(ZoneId zone) {
        return this;
      }

      @Override
      public Instant instant() {
        return fault.get();
      }
    };
  }

  private static Bench.Outcome run(Supplier<Instant> fault, String... args) {
    StringWriter err = new StringWriter();
    StringWriter out = new StringWriter();
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new PrintWriter(out),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            broken(fault));
    return new Bench.Outcome(Main.run(desk, args), out.toString(), err.toString());
  }

  private static Instant misused() {
    throw new IllegalArgumentException("a day too many");
  }

  private static Instant deep() {
    throw new StackOverflowError();
  }

  @Test
  void oneLineAsksForAReport() {
    Bench.Outcome r = run(ProgramFaultTest::misused, WASH);
    assertThat(r.code()).isEqualTo(Main.INTERNAL).isNotEqualTo(Main.BAD_INPUT);
    assertThat(r.out()).isEmpty();
    assertThat(r.err().lines())
        .singleElement()
        .asString()
        .contains("fault of the program", "a day too many", "please report it", "--trace")
        .contains("version " + Version.number())
        .contains("broodtide " + String.join(" ", WASH));
  }

  @Test
  void theStackTraceComesWhenItIsAskedFor() {
    String[] traced = new String[WASH.length + 1];
    System.arraycopy(WASH, 0, traced, 0, WASH.length);
    traced[WASH.length] = "--trace";
    Bench.Outcome r = run(ProgramFaultTest::misused, traced);
    assertThat(r.code()).isEqualTo(Main.INTERNAL);
    assertThat(r.err()).contains("please report it", "\tat broodtide.cli.WashCommand");
  }

  @Test
  void errorsOfTheMachineAreToldTheSameWay() {
    Bench.Outcome r = run(ProgramFaultTest::deep, WASH);
    assertThat(r.code()).isEqualTo(Main.INTERNAL);
    assertThat(r.err().lines())
        .singleElement()
        .asString()
        .contains("StackOverflowError", "please report it");
  }

  @Test
  void aFaultIsNoReasonToLeaveAColonyOut() {
    StringWriter err = new StringWriter();
    CommandContext desk =
        new CommandContext(
            InputStream.nullInputStream(),
            new PrintWriter(Writer.nullWriter()),
            new PrintWriter(err),
            new Terminal(80, false, true),
            false,
            broken(ProgramFaultTest::misused));
    int code = Main.run(desk, "forecast", "-", "--climate", "temperate");
    assertThat(code).isEqualTo(Main.INTERNAL);
    assertThat(err.toString()).contains("please report it");
  }
}
