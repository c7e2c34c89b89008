package broodtide.chart;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.parsers.DocumentBuilderFactory;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** Reads a picture's SVG back with the JDK's own XML parser. */
final class Drawn {
  private static final Pattern NUMBER = Pattern.compile("-?(?:\\d+\\.?\\d*|\\.\\d+)");

  /** A text as it stands in the picture. */
  record Word(String text, double size, Box room) {}

  private final Document document;

  Drawn(String svg) {
    try {
      document =
          DocumentBuilderFactory.newInstance()
              .newDocumentBuilder()
              .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
    } catch (Exception e) {
      throw new AssertionError("not well-formed XML: " + e.getMessage(), e);
    }
  }

  static Drawn of(Picture picture) {
    return new Drawn(picture.svg());
  }

  Element root() {
    return document.getDocumentElement();
  }

  Box viewBox() {
    String[] v = root().getAttribute("viewBox").split(" ", -1);
    return new Box(0, 0, Double.parseDouble(v[2]), Double.parseDouble(v[3]));
  }

  List<Word> words() {
    List<Word> words = new ArrayList<>();
    for (Element e : elements(root(), "text")) {
      String own = e.getAttribute("font-size");
      double size = Double.parseDouble(own.isEmpty() ? root().getAttribute("font-size") : own);
      Type.Anchor anchor =
          switch (e.getAttribute("text-anchor")) {
            case "middle" -> Type.Anchor.MIDDLE;
            case "end" -> Type.Anchor.END;
            default -> Type.Anchor.START;
          };
      Type type = new Type(size, e.hasAttribute("font-weight"), Palette.INK, anchor, false);
      double x = Double.parseDouble(e.getAttribute("x"));
      double y = Double.parseDouble(e.getAttribute("y"));
      words.add(new Word(e.getTextContent(), size, type.room(e.getTextContent(), x, y)));
    }
    return words;
  }

  /** All groups of a kind, in the order drawn. */
  List<Element> groups(String kind) {
    return elements(root(), "g").stream()
        .filter(g -> g.getAttribute("class").equals(kind))
        .toList();
  }

  /** The paths inside an element. */
  static List<Element> paths(Element e) {
    return elements(e, "path");
  }

  static List<Element> elements(Element parent, String name) {
    NodeList nodes = parent.getElementsByTagName(name);
    List<Element> list = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      list.add((Element) nodes.item(i));
    }
    return list;
  }

  /** Points of a path of the one form that is written: a start and then steps. */
  static List<double[]> points(Element path) {
    Matcher m = NUMBER.matcher(path.getAttribute("d"));
    List<Double> numbers = new ArrayList<>();
    while (m.find()) {
      numbers.add(Double.parseDouble(m.group()));
    }
    List<double[]> points = new ArrayList<>();
    double x = 0;
    double y = 0;
    for (int i = 0; i < numbers.size(); i += 2) {
      x += numbers.get(i);
      y += numbers.get(i + 1);
      points.add(new double[] {x, y});
    }
    return points;
  }

  /** Height of a line at x, between its points. */
  static double heightAt(List<double[]> line, double x) {
    for (int i = 1; i < line.size(); i++) {
      double[] a = line.get(i - 1);
      double[] b = line.get(i);
      if (x >= a[0] && x <= b[0]) {
        return b[0] == a[0] ? b[1] : a[1] + (b[1] - a[1]) * (x - a[0]) / (b[0] - a[0]);
      }
    }
    throw new AssertionError("no line at " + x);
  }

  /** Upper and lower edge of a band at x: where an upright line crosses its edge. */
  static double[] edgesAt(List<double[]> polygon, double x) {
    double top = Double.POSITIVE_INFINITY;
    double foot = Double.NEGATIVE_INFINITY;
    for (int i = 0; i < polygon.size(); i++) {
      double[] a = polygon.get(i);
      double[] b = polygon.get((i + 1) % polygon.size());
      if (a[0] != b[0] && x >= Math.min(a[0], b[0]) && x <= Math.max(a[0], b[0])) {
        double y = a[1] + (b[1] - a[1]) * (x - a[0]) / (b[0] - a[0]);
        top = Math.min(top, y);
        foot = Math.max(foot, y);
      }
    }
    return new double[] {top, foot};
  }
}
