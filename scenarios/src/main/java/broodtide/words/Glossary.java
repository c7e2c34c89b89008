package broodtide.words;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;

/** Terms of the trade and of the answers, for whoever meets one of them for the first time. */
public final class Glossary {
  /**
   * A term.
   *
   * @param term as it is explained
   * @param meaning one sentence or two
   * @param found where it stands in a text
   */
  public record Entry(String term, String meaning, Pattern found) {
    /**
     * {@return whether a text uses the term}
     *
     * @param text what a reader sees, without markup
     */
    public boolean in(String text) {
      return found.matcher(text).find();
    }
  }

  /** All terms, by the alphabet. */
  public static final List<Entry> ALL =
      List.of(
          entry("90 % interval", "90 % interval", "Nine of ten simulated colonies lie inside it."),
          entry("Brood", "\\bbrood\\b", "The young in their cells: eggs, larvae and pupae."),
          entry(
              "Broodless",
              "\\bbroodless|\\bno brood\\b",
              "Without brood. All mites sit on adult bees then."),
          entry(
              "Capped",
              "\\bcapped\\b",
              "A capped cell is sealed with wax. Mites breed in it, and most treatments do not"
                  + " reach them there."),
          entry("Colony strength", "\\bcolony strength\\b", "How many adult bees a colony has."),
          entry(
              "Control",
              "\\bcontrols?\\b",
              "A treatment or another measure against mites, such as cutting out drone comb."),
          entry("Decision date", "\\bdecision date\\b", "The day from which plans may begin."),
          entry(
              "Drone comb",
              "\\bdrone comb\\b",
              "Comb in which males are raised. Mites prefer it, so that cutting it out takes them"
                  + " along."),
          entry("Efficacy", "\\befficacy\\b", "The share of the mites that a treatment kills."),
          entry("Infestation", "\\binfestations?\\b", "Mites on adult bees, per 100 adult bees."),
          entry(
              "Laying factor",
              "\\blaying factor\\b",
              "How many eggs the queen lays, against an average one."),
          entry("Median", "\\bmedian\\b", "The middle: half lie below it and half above it."),
          entry(
              "Mite wash",
              "\\bwash(?:es|ed)?\\b",
              "Bees shaken in alcohol or powdered sugar, so that their mites come off and can be"
                  + " counted."),
          entry("Reinvasion", "\\breinvasion\\b", "Mites that come in on bees of other colonies."),
          entry(
              "Reproduction factor",
              "\\breproduction factor\\b",
              "How many daughters a mite has, against the average."),
          entry(
              "Simulated colony",
              "\\bsimulated colon(?:y|ies)\\b",
              "One of many colonies run through the season, each consistent with the counts."),
          entry("Super", "\\bsupers?\\b", "A box for honey above the brood."),
          entry(
              "Treatment threshold",
              "\\bthresholds?\\b",
              "The infestation at which a named source advises to act."),
          entry(
              "Winter bees",
              "\\bwinter bees?\\b",
              "The long-lived bees of autumn, which carry the colony into spring."),
          entry(
              "Winter loss",
              "\\bwinter loss(?:es)?\\b|\\blosses over winter\\b",
              "The chance that the colony is dead or too weak by spring, from any cause."),
          entry(
              "Winter-bee brood",
              "\\bwinter-bee brood\\b",
              "The capped worker brood from which the winter bees emerge. Infested: with a mite in"
                  + " the cell."),
          entry("Yard", "\\byards?\\b", "Hives that stand together."));

  private Glossary() {}

  private static Entry entry(String term, String found, String meaning) {
    return new Entry(term, meaning, Pattern.compile(found, Pattern.CASE_INSENSITIVE));
  }

  /**
   * {@return the terms that a text uses, with those that their meanings use, by the alphabet}
   *
   * @param text what a reader sees, without markup
   */
  public static List<Entry> of(String text) {
    Set<Entry> used = new LinkedHashSet<>();
    String more = text;
    while (!more.isEmpty()) {
      StringBuilder meanings = new StringBuilder();
      for (Entry entry : ALL) {
        if (!used.contains(entry) && entry.in(more)) {
          used.add(entry);
          meanings.append(entry.meaning()).append('\n');
        }
      }
      more = meanings.toString();
    }
    return ALL.stream().filter(used::contains).toList();
  }
}
