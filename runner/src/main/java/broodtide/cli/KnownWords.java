package broodtide.cli;

import broodtide.assessment.Outcome;
import broodtide.catalog.Catalog;
import broodtide.catalog.Surroundings;
import broodtide.forms.Nearest;
import broodtide.measure.OutOfRange;
import broodtide.wash.Frame;
import broodtide.wash.WashMethod;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;

/** Words that options know: for help, for completion, and for reading them. */
final class KnownWords {
  private KnownWords() {}

  /**
   * What a word of an option means.
   *
   * @param option the option, for the message
   * @param given the word given
   * @param all what can be meant
   * @param word the word of each
   * @throws OutOfRange when the word is none of these; the message names the nearest one
   */
  static <T> T read(String option, String given, T[] all, Function<T, String> word) {
    List<String> words = Arrays.stream(all).map(word).toList();
    int place = words.indexOf(given);
    if (place < 0) {
      throw new OutOfRange(option, quoted(given), allowed(given, words));
    }
    return all[place];
  }

  /** The list of words, and the one that was most likely meant. */
  static String allowed(String given, List<String> words) {
    return "one of " + String.join(", ", words) + Nearest.hint(given, words);
  }

  private static String quoted(String given) {
    return "\"" + given + "\"";
  }

  /** The shipped climates. */
  static final class Climates implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Catalog.CLIMATES.names().iterator();
    }
  }

  /** The shipped controls. */
  static final class Controls implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Catalog.CONTROLS.names().iterator();
    }
  }

  /** The shipped sets of treatment thresholds. */
  static final class Thresholds implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Catalog.THRESHOLDS.names().iterator();
    }
  }

  /** How many colonies stand around. */
  static final class Neighbours implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Arrays.stream(Surroundings.values()).map(Surroundings::word).iterator();
    }
  }

  /** The method of mites that fell on a board, as tables of counts name it. */
  static final String BOARD = "board";

  /** Ways of counting. */
  static final class Methods implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Stream.concat(Arrays.stream(WashMethod.values()).map(WashMethod::id), Stream.of(BOARD))
          .iterator();
    }
  }

  /** Frames that a wash is taken from. */
  static final class Frames implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Arrays.stream(Frame.values()).map(Frame::id).iterator();
    }
  }

  /** What plans are judged by. */
  static final class Outcomes implements Iterable<String> {
    @Override
    public Iterator<String> iterator() {
      return Arrays.stream(Outcome.values()).map(Outcome::word).iterator();
    }
  }
}
