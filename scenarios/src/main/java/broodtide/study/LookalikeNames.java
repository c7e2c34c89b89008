package broodtide.study;

import broodtide.forms.Fault;
import broodtide.forms.HiddenCharacters;
import java.text.Normalizer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * Points out names of colonies that differ only in white space, in upper and lower case, in the
 * Unicode form of a letter, or in letters and digits that look alike. They are never taken as one:
 * that is for the beekeeper to say.
 *
 * <p>Look-alikes are those that people meet: Greek, Cyrillic and Armenian letters that have the
 * shape of a Latin one, digits of other scripts, and the figures one and nought beside the letters
 * l, I and O. Whole tables of look-alikes hold thousands more, which weigh megabytes.
 */
public final class LookalikeNames {
  /** Names and pairs that are listed; the rest are counted. */
  private static final int LISTED = 5;

  private static final Map<Integer, Integer> LATIN = latin();

  private LookalikeNames() {}

  private static Map<Integer, Integer> latin() {
    String[][] pairs = {
      // Greek
      {"ΑΒΕΖΗΙΚΜΝΟΡΤΥΧϹͿαικνορυϲϳ", "ABEZHIKMNOPTYXCJaikvopucj"},
      // Cyrillic
      {"АВЕКМНОРСТУХЅІЈԚԜҮӀҺаеорсухѕіјһԁԛԝӏЁёЇї", "ABEKMHOPCTYXSIJQWYIhaeopcyxsijhdqwlËëÏï"},
      // Armenian
      {"ՕՍԼօոսհցզ", "OULonuhgq"},
      // Latin beyond the alphabet, apostrophes, dashes
      {"ıİɑɡȷ\u2018\u2019\u02bc`\u2010\u2011\u2012\u2013\u2014\u2212", "iIagj''''------"}
    };
    Map<Integer, Integer> out = new HashMap<>();
    for (String[] pair : pairs) {
      for (int i = 0; i < pair[0].length(); i++) {
        out.put((int) pair[0].charAt(i), (int) pair[1].charAt(i));
      }
    }
    return Map.copyOf(out);
  }

  /** Names that look alike within one list, each with its place, such as {@code line 4}. */
  static List<String> within(Map<String, String> places) {
    return told(groups(places.keySet()), places);
  }

  /**
   * {@return sentences on names of one list that look like names of another}
   *
   * @param some names with the place where each first stands, such as {@code line 4 of a.csv}
   * @param others the same of another list
   */
  public static List<String> between(Map<String, String> some, Map<String, String> others) {
    Map<String, String> places = new LinkedHashMap<>(some);
    others.forEach(places::putIfAbsent);
    List<List<String>> across = new ArrayList<>();
    for (List<String> group : groups(places.keySet())) {
      boolean foreign =
          group.stream().anyMatch(n -> !some.containsKey(n))
              && group.stream().anyMatch(n -> !others.containsKey(n));
      if (foreign) {
        across.add(group);
      }
    }
    return told(across, places);
  }

  /**
   * {@return lines as places}
   *
   * @param lines the line on which each name first stands
   * @param of what follows the line, such as {@code " of a.csv"}; may be empty
   */
  public static Map<String, String> lines(Map<String, Integer> lines, String of) {
    Map<String, String> places = new LinkedHashMap<>();
    lines.forEach((name, line) -> places.put(name, "line " + line + of));
    return places;
  }

  private static List<String> told(List<List<String>> groups, Map<String, String> places) {
    List<String> notes = new ArrayList<>();
    for (List<String> group : groups.subList(0, Math.min(LISTED, groups.size()))) {
      String all =
          group.stream()
              .limit(LISTED)
              .map(n -> Fault.quoted(n) + " (" + places.get(n) + ")")
              .collect(Collectors.joining(", "));
      String more = group.size() > LISTED ? " and " + (group.size() - LISTED) + " more" : "";
      notes.add(
          "Taken as different colonies, though the names differ only in "
              + differences(group)
              + ": "
              + all
              + more
              + ". If they are one colony, write its name the same way everywhere.");
    }
    if (groups.size() > LISTED) {
      notes.add((groups.size() - LISTED) + " more groups of names look alike.");
    }
    return notes;
  }

  /** Names that look alike, in the order of the list; names that stand alone are left out. */
  private static List<List<String>> groups(Set<String> names) {
    List<String> all = List.copyOf(names);
    int[] parent = new int[all.size()];
    Arrays.setAll(parent, i -> i);
    Map<String, Integer> first = new HashMap<>();
    for (int i = 0; i < parent.length; i++) {
      for (String key : keys(all.get(i))) {
        Integer other = first.putIfAbsent(key, i);
        if (other != null) {
          parent[root(parent, i)] = root(parent, other);
        }
      }
    }
    Map<Integer, List<String>> groups = new LinkedHashMap<>();
    for (int i = 0; i < parent.length; i++) {
      groups.computeIfAbsent(root(parent, i), r -> new ArrayList<>()).add(all.get(i));
    }
    return groups.values().stream().filter(g -> g.size() > 1).toList();
  }

  private static int root(int[] parent, int of) {
    int at = of;
    while (parent[at] != at) {
      parent[at] = parent[parent[at]];
      at = parent[at];
    }
    return at;
  }

  /** Two names that share one of these look alike. */
  private static Set<String> keys(String name) {
    String bare = bare(name);
    String latin = latin(bare);
    String figures = latin.replace('l', '1').replace('I', '1').replace('|', '1').replace('O', '0');
    Set<String> keys = new LinkedHashSet<>();
    keys.add("case " + folded(bare));
    keys.add("case " + folded(latin));
    keys.add("as written " + figures);
    return keys;
  }

  /** The compatibility form without white space. */
  private static String bare(String name) {
    return withoutSpace(Normalizer.normalize(name, Normalizer.Form.NFKC));
  }

  private static String withoutSpace(String name) {
    return name.replaceAll("[\\s\\p{Z}]", "");
  }

  private static String latin(String name) {
    StringBuilder out = new StringBuilder(name.length());
    name.codePoints()
        .forEach(
            c -> {
              int digit = Character.digit(c, 10);
              out.appendCodePoint(digit >= 0 ? '0' + digit : LATIN.getOrDefault(c, c));
            });
    return out.toString();
  }

  private static String folded(String name) {
    return name.toUpperCase(Locale.ROOT).toLowerCase(Locale.ROOT);
  }

  /** What sets the others that are listed apart from the first. */
  private static String differences(List<String> group) {
    return group.stream()
        .limit(LISTED)
        .skip(1)
        .map(other -> difference(group.get(0), other))
        .distinct()
        .collect(Collectors.joining("; or in "));
  }

  private static String difference(String a, String b) {
    String in;
    if (withoutSpace(a).equals(withoutSpace(b))) {
      in = "white space";
    } else if (bare(a).equals(bare(b))) {
      in = "the Unicode form of a character";
    } else if (folded(bare(a)).equals(folded(bare(b)))) {
      in = "upper and lower case";
    } else {
      in = "characters that look alike";
    }
    int[] one = a.codePoints().toArray();
    int[] other = b.codePoints().toArray();
    int at = Arrays.mismatch(one, other);
    if (at >= one.length || at >= other.length || (one[at] < 0x80 && other[at] < 0x80)) {
      return in;
    }
    return in
        + ", first in "
        + HiddenCharacters.told(one[at])
        + " against "
        + HiddenCharacters.told(other[at]);
  }
}
