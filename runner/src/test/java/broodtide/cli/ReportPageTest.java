package broodtide.cli;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.w3c.dom.Attr;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

/** The report of a record full of hostile names, read by the XML parser of the JDK. */
class ReportPageTest {
  @TempDir static Path folder;
  private static String html = "";
  private static Document page;

  @BeforeAll
  static void write() throws Exception {
    Trial trial =
        Trial.run(
            HostileRecord.csv(),
            ("compare - --climate boreal --colonies 64 --quiet --out " + folder).split(" ", -1));
    assertThat(trial.err()).isEmpty();
    assertThat(trial.code()).isEqualTo(Main.OK);
    html = Files.readString(folder.resolve("report.html"));
    page =
        DocumentBuilderFactory.newInstance()
            .newDocumentBuilder()
            .parse(new ByteArrayInputStream(html.getBytes(StandardCharsets.UTF_8)));
  }

  @Test
  void holdsNothingThatRunsOrLoads() {
    Set<String> tags = new HashSet<>();
    for (Element e : all("*")) {
      tags.add(e.getTagName());
      for (int i = 0; i < e.getAttributes().getLength(); i++) {
        Attr a = (Attr) e.getAttributes().item(i);
        assertThat(a.getName())
            .doesNotStartWith("on")
            .isNotIn("src", "srcset", "style", "xlink:href");
        if (a.getName().equals("href")) {
          assertThat(a.getValue()).startsWith("#");
        }
      }
    }
    assertThat(tags).doesNotContain("script", "img", "link", "iframe", "object", "embed", "form");
    assertThat(all("style").get(0).getTextContent())
        .doesNotContain("url(")
        .doesNotContain("@import");
    assertThat(html).contains("Content-Security-Policy").contains("default-src 'none'");
  }

  @Test
  void showsEveryHostileNameAsItIs() {
    String text = page.getDocumentElement().getTextContent();
    assertThat(text)
        .contains(HostileRecord.SCRIPT)
        .contains(HostileRecord.FORMULA)
        .contains(HostileRecord.LONG)
        .contains(HostileRecord.IMAGE)
        .contains(HostileRecord.CLOSING.replace('\u202e', '\ufffd'));
  }

  @Test
  void canBeReadAloud() {
    assertThat(page.getDocumentElement().getAttribute("lang")).isEqualTo("en");
    assertThat(all("h1")).hasSize(1);
    int last = 1;
    for (Element e : all("*")) {
      if (e.getTagName().matches("h[1-6]")) {
        int level = e.getTagName().charAt(1) - '0';
        assertThat(level).as(e.getTextContent()).isLessThanOrEqualTo(last + 1);
        last = level;
      }
    }
    all("table").forEach(t -> assertThat(t.getElementsByTagName("caption").getLength()).isOne());
    all("th").forEach(th -> assertThat(th.getAttribute("scope")).isIn("row", "col"));
    for (Element svg : all("svg")) {
      if (svg.getAttribute("role").equals("img")) {
        assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).isNotBlank();
        assertThat(svg.getElementsByTagName("desc").item(0).getTextContent()).isNotBlank();
      }
    }
  }

  @Test
  void everyLinkHasItsPlace() {
    List<String> ids = new ArrayList<>();
    all("*").stream().map(e -> e.getAttribute("id")).filter(id -> !id.isEmpty()).forEach(ids::add);
    assertThat(ids).doesNotHaveDuplicates();
    all("a").forEach(a -> assertThat(ids).contains(a.getAttribute("href").substring(1)));
  }

  @Test
  void sectionsStandInOrder() {
    assertThat(all("h2").stream().map(Element::getTextContent).limit(3))
        .containsExactlyInAnyOrder(
            "Colony " + HostileRecord.SCRIPT,
            "Colony " + HostileRecord.FORMULA,
            "Colony " + HostileRecord.LONG);
    assertThat(all("h2").stream().map(Element::getTextContent).skip(3))
        .containsExactly(
            "How to read these pages",
            "What is assumed",
            "What would change this answer",
            "Cautions",
            "Words",
            "How this page was made");
    assertThat(all("h3").stream().limit(7).map(Element::getTextContent))
        .containsExactly(
            "The season",
            "The plans in figures",
            "When to begin",
            "Inside the hive",
            "What the washes say",
            "What was learned of the colony",
            "What would change this answer");
  }

  /** The page opens with the sheet, whose rows lead to the sections in the same order. */
  @Test
  void opensWithTheSheet() {
    Element header = all("header").get(0);
    NodeList rows = header.getElementsByTagName("tbody").item(0).getChildNodes();
    List<String> names = new ArrayList<>();
    for (int i = 0; i < rows.getLength(); i++) {
      if (rows.item(i) instanceof Element row) {
        names.add("Colony " + row.getElementsByTagName("bdi").item(0).getTextContent());
      }
    }
    assertThat(names)
        .containsExactlyElementsOf(
            all("h2").stream().map(Element::getTextContent).limit(3).toList());
    assertThat(header.getTextContent())
        .contains("3 hives", "Lowest winter loss of the plans", "Gain", "one count");
  }

  /** What holds for every hive is said once. */
  @Test
  void saysLegendsAndCautionsOnce() {
    for (String once :
        List.of(
            "Dots with bars are the washes",
            "Highest infestation from now on",
            "The registered label and local law decide whether",
            "Neighbours: with few colonies around")) {
      assertThat(page.getDocumentElement().getTextContent().split(once, -1)).as(once).hasSize(2);
    }
  }

  /** What the library warns of in the controls of the plans reaches whoever reads the page. */
  @Test
  void cautionsOfEveryControlInThePlansAreThere() {
    Element section =
        all("section").stream()
            .filter(s -> s.getAttribute("class").equals("cautions"))
            .findFirst()
            .orElseThrow();
    List<String> names = new ArrayList<>();
    NodeList strong = section.getElementsByTagName("strong");
    for (int i = 0; i < strong.getLength(); i++) {
      names.add(strong.item(i).getTextContent());
    }
    assertThat(names).isNotEmpty().doesNotHaveDuplicates();
    for (String name : Catalog.CONTROLS.names()) {
      ControlTemplate control = Catalog.control(name);
      if (names.contains(control.title())) {
        control.cautions().stream()
            .filter(c -> !c.startsWith("The registered label"))
            .forEach(c -> assertThat(section.getTextContent()).contains(c));
      }
    }
    assertThat(section.getTextContent()).contains("wear a respirator for acid vapour");
  }

  @Test
  void namesNoFolderAndNothingThatLeavesTheFiguresAlone() {
    assertThat(html).doesNotContain(folder.toString());
    assertThat(all("code").get(0).getTextContent())
        .isEqualTo("broodtide compare - --climate boreal --colonies 64");
  }

  @Test
  void tablesBesideItAreSafeInSpreadsheets() throws IOException {
    for (String name : List.of("plans.csv", "season.csv")) {
      String csv = Files.readString(folder.resolve(name));
      assertThat(csv).endsWith("\r\n");
      assertThat(csv).contains("\"'=HYPERLINK(\"\"http://x.example\"\",\"\"A&B\"\")\"");
    }
  }

  private static List<Element> all(String tag) {
    NodeList nodes = page.getElementsByTagName(tag);
    List<Element> out = new ArrayList<>();
    for (int i = 0; i < nodes.getLength(); i++) {
      out.add((Element) nodes.item(i));
    }
    return out;
  }
}
