package broodtide.cli;

import broodtide.measure.RefusedException;
import broodtide.season.YearSpan;
import broodtide.terminal.Terminal;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.function.Function;
import picocli.CommandLine;

/**
 * The program's entry: parses, runs, and turns what went wrong into one message and an exit code.
 */
public final class Main {
  /** All went well. */
  public static final int OK = 0;

  /** A fault of the program itself, whatever the input; it should be reported. */
  public static final int INTERNAL = 1;

  /** The input or the way the program was called. */
  public static final int BAD_INPUT = 2;

  private Main() {}

  /**
   * Runs the program and exits.
   *
   * @param args the command and its options
   */
  public static void main(String[] args) {
    System.setProperty("java.awt.headless", "true");
    PrintWriter out = new AnswerWriter(new FileOutputStream(FileDescriptor.out));
    PrintWriter err = new PrintWriter(System.err, true, StandardCharsets.UTF_8);
    int code = run(CommandContext.here(out, err), args);
    out.flush();
    err.flush();
    System.exit(code);
  }

  /**
   * Runs the program with a desk of its own, for tests and for embedding.
   *
   * @param desk where it reads and writes
   * @param args the command and its options
   * @return exit code: {@link #OK}, {@link #INTERNAL} or {@link #BAD_INPUT}
   */
  public static int run(CommandContext desk, String... args) {
    Broodtide program = new Broodtide();
    CommandLine line = Broodtide.line(desk, program, args);
    line.setOut(desk.out());
    line.setErr(desk.err());
    line.setCaseInsensitiveEnumValuesAllowed(true);
    line.registerConverter(LocalDate.class, Main::date);
    line.registerConverter(int.class, Main::whole);
    line.registerConverter(Integer.class, Main::whole);
    line.registerConverter(long.class, Main::seed);
    line.registerConverter(Double.class, Main::decimal);
    line.registerConverter(YearSpan.class, Main::span);
    line.registerConverter(Path.class, Main::path);
    line.setUsageHelpAutoWidth(false);
    line.setColorScheme(
        CommandLine.Help.defaultColorScheme(
            desk.terminal().colour() ? CommandLine.Help.Ansi.ON : CommandLine.Help.Ansi.OFF));
    line.setParameterExceptionHandler(Misuse::explain);
    Manual.bind(line);
    line.setExecutionExceptionHandler((e, cmd, parsed) -> failure(desk, e, program.trace, args));
    try {
      int code = line.execute(args);
      if (code == OK) {
        desk.deliver();
      }
      return code;
    } catch (OutOfMemoryError e) {
      return outOfMemory(desk);
    } catch (RefusedException | StackOverflowError | LinkageError | AssertionError e) {
      return failure(desk, e, program.trace, args);
    }
  }

  private static YearSpan span(String text) {
    return YearSpan.parse(text)
        .orElseThrow(
            () ->
                new CommandLine.TypeConversionException(
                    "'" + text + "' is not a span of the year; write it like 05-10..07-25"));
  }

  private static Path path(String text) {
    if (text.isBlank()) {
      throw new CommandLine.TypeConversionException(
          "the name is blank; give that of a file or folder");
    }
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new CommandLine.TypeConversionException(UserFile.unusable(text));
    }
  }

  private static LocalDate date(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new CommandLine.TypeConversionException(
          "'" + text + "' cannot be read as a date; write it like 2026-08-20");
    }
  }

  private static Integer whole(String text) {
    return number(text, Integer::valueOf, "whole number");
  }

  private static Long seed(String text) {
    return number(text, Long::valueOf, "whole number");
  }

  private static Double decimal(String text) {
    return number(text, Double::valueOf, "number");
  }

  private static <T> T number(String text, Function<String, T> read, String wanted) {
    try {
      return read.apply(text);
    } catch (NumberFormatException e) {
      throw new CommandLine.TypeConversionException("'" + text + "' is no " + wanted);
    }
  }

  private static int failure(CommandContext desk, Throwable e, boolean trace, String... args) {
    if (e instanceof RefusedException refused) {
      refused.reason().lines().map(Terminal::clean).forEach(desk.err()::println);
      return BAD_INPUT;
    }
    if (e.getCause() instanceof OutOfMemoryError) {
      return outOfMemory(desk);
    }
    desk.err().println(ProgramFault.line(e, trace, List.of(args)));
    if (trace) {
      e.printStackTrace(desk.err());
    }
    return INTERNAL;
  }

  /** What a run needs is reckoned before it begins; this is for what the reckoning missed. */
  private static int outOfMemory(CommandContext desk) {
    desk.err()
        .println(
            "the memory ran out ("
                + (Runtime.getRuntime().maxMemory() >> 20)
                + " MB); nothing was written; lower --colonies, shorten the forecast with --until,"
                + " compare fewer plans, or give Java more memory with"
                + " JAVA_TOOL_OPTIONS=-Xmx4g");
    return BAD_INPUT;
  }
}
