package broodtide.page;

import broodtide.assessment.Horizon;
import broodtide.assessment.UsualPlans;
import broodtide.assessment.YearStages;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.Referred;
import broodtide.catalog.Surroundings;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.decision.PlanText;
import broodtide.forms.Source;
import broodtide.mite.StockTraits;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import broodtide.season.YearSpan;
import broodtide.study.ColonyStart;
import broodtide.study.Study;
import broodtide.study.TreatmentFile;
import broodtide.study.WashFile;
import broodtide.wash.ThresholdSet;
import broodtide.wash.Wash;
import broodtide.web.Refused;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * A study as the page shows and makes it: the place, and plans. What the page does not show, such
 * as rates of one's own, is kept as it stands.
 *
 * @param old the study that there is
 */
record StudyPage(Optional<Study> old) {
  /** Plans besides waiting that a page can hold. */
  static final int MOST_PLANS = 4;

  private static final int MOST_CONTROLS = 10;
  private static final String NO_NAME = "hive 1";

  /** Fills a node with the place and the plans. */
  void write(ObjectNode node) {
    node.put("there", old.isPresent());
    if (old.isEmpty()) {
      return;
    }
    Study study = old.get();
    node.put("title", study.title());
    node.put("climate", study.climate().name());
    node.put("climateTitle", study.climate().title());
    node.put("shipped", Catalog.CLIMATES.names().contains(study.climate().name()));
    node.put("south", study.southern());
    node.put("neighbours", study.surroundings().word());
    node.put("threshold", study.thresholds().written());
    span(node.putArray("supers"), study.climate().supers(), study.southern());
    span(node.putArray("winterBees"), study.climate().winterBees(), study.southern());
    ArrayNode plans = node.putArray("plans");
    for (int p = 0; p < study.plans().size(); p++) {
      Plan plan = study.plans().get(p);
      if (plan.controls().isEmpty()) {
        continue;
      }
      ObjectNode one = plans.addObject().put("name", plan.name());
      ArrayNode controls = one.putArray("controls");
      for (int c = 0; c < plan.controls().size(); c++) {
        Control control = plan.controls().get(c);
        Optional<ControlTemplate> shipped = shipped(control);
        controls
            .addObject()
            .put("use", shipped.map(ControlTemplate::name).orElse(""))
            .put("title", control.name())
            .put("start", control.from().toString())
            .put("place", p + "." + c);
      }
    }
  }

  private static Optional<ControlTemplate> shipped(Control control) {
    return Catalog.CONTROLS.names().stream()
        .map(Catalog::control)
        .filter(t -> t.at(control.from()).equals(control))
        .findFirst();
  }

  static void span(ArrayNode into, YearSpan north, boolean southern) {
    YearSpan span = southern ? north.southern() : north;
    into.add(span.from().toString().substring(2));
    into.add(span.to().toString().substring(2));
  }

  /**
   * {@return the study that the page asks for}
   *
   * @param body the place and the plans
   * @param washes the washes that are saved with it
   * @param treatments the treatments
   * @param folder where it is saved
   * @param today the day
   * @throws Refused when a value is not allowed
   */
  Study made(
      JsonNode body,
      Optional<WashFile> washes,
      Optional<TreatmentFile> treatments,
      Path folder,
      LocalDate today) {
    JsonNode place = body.get("place");
    boolean southern = place.path("south").asBoolean();
    Climate climate = climate(place, southern);
    List<Wash> taken = washes.map(WashFile::washes).orElse(List.of());
    LocalDate first =
        Stream.concat(
                taken.stream().map(Wash::date),
                treatments.stream().flatMap(t -> t.given().stream()).map(g -> g.control().from()))
            .min(Comparator.naturalOrder())
            .orElse(today);
    LocalDate start = old.map(Study::start).filter(d -> d.isBefore(first)).orElse(first);
    List<Plan> plans = new ArrayList<>(List.of(waiting()));
    plans.addAll(plans(body.path("plans")));
    LocalDate last =
        taken.stream().map(Wash::date).max(Comparator.naturalOrder()).orElse(today).plusDays(1);
    LocalDate spring = Horizon.spring(new YearStages(southern ? climate.inSouth() : climate), last);
    LocalDate until =
        Stream.concat(
                Stream.concat(Stream.of(spring), old.map(Study::until).stream()),
                plans.stream().flatMap(p -> p.controls().stream()).map(c -> c.to().plusDays(1)))
            .max(Comparator.naturalOrder())
            .orElse(spring);
    return new Study(
        old.map(Study::title).orElse("My hives"),
        climate,
        southern,
        start,
        until,
        colony(washes),
        surroundings(place),
        old.map(Study::immigration).orElse(List.of()),
        Optional.of(
            old.flatMap(Study::washes)
                .orElseGet(
                    () ->
                        new Referred<>(
                            HiveFolder.WASHES, Source.of(folder.resolve(HiveFolder.WASHES))))),
        old.map(Study::given).orElse(List.of()),
        plans,
        threshold(place),
        old.map(Study::bees).orElse(Map.of()),
        old.map(Study::mites).orElse(Map.of()),
        old.map(Study::highs).orElse(DailyHighs.NONE),
        old.map(Study::resistant).orElse(List.of()));
  }

  private Plan waiting() {
    return old.stream()
        .flatMap(s -> s.plans().stream())
        .filter(p -> p.controls().isEmpty())
        .findFirst()
        .orElse(Plan.waiting(UsualPlans.WAIT));
  }

  /** The colony of the study, as long as there are washes of it or none at all. */
  private ColonyStart colony(Optional<WashFile> washes) {
    Optional<ColonyStart> kept =
        old.map(Study::colony)
            .filter(
                c ->
                    washes.map(w -> w.colonies().containsKey(c.name())).orElse(true)
                        || c.infestation().isPresent());
    return kept.orElseGet(
        () ->
            new ColonyStart(
                washes.flatMap(w -> w.colonies().keySet().stream().findFirst()).orElse(NO_NAME),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                1,
                StockTraits.AVERAGE));
  }

  private Climate climate(JsonNode place, boolean southern) {
    String name = place.path("climate").asText();
    Climate climate;
    if (Catalog.CLIMATES.names().contains(name)) {
      climate = Catalog.climate(name);
    } else {
      climate =
          old.map(Study::climate)
              .filter(c -> c.name().equals(name))
              .orElseThrow(() -> Refused.bad("there is no climate " + Refused.quoted(name)));
    }
    return climate.with(
        span(place.path("supers"), southern).orElse(climate.supers()),
        span(place.path("winterBees"), southern).orElse(climate.winterBees()));
  }

  private static Optional<YearSpan> span(JsonNode days, boolean southern) {
    if (!days.isArray() || days.size() != 2) {
      return Optional.empty();
    }
    try {
      YearSpan span =
          new YearSpan(
              MonthDay.parse("--" + days.get(0).asText()),
              MonthDay.parse("--" + days.get(1).asText()));
      return Optional.of(southern ? span.southern() : span);
    } catch (DateTimeException e) {
      throw Refused.bad("expected days of the year such as 05-10");
    }
  }

  private static Surroundings surroundings(JsonNode place) {
    String word = place.path("neighbours").asText(Surroundings.SPARSE.word());
    return Stream.of(Surroundings.values())
        .filter(s -> s.word().equals(word))
        .findFirst()
        .orElseThrow(() -> Refused.bad("there are no surroundings " + Refused.quoted(word)));
  }

  private Referred<ThresholdSet> threshold(JsonNode place) {
    String written = place.path("threshold").asText(Catalog.USUAL_THRESHOLD);
    Optional<Referred<ThresholdSet>> kept =
        old.map(Study::thresholds).filter(t -> t.written().equals(written));
    if (kept.isPresent()) {
      return kept.get();
    }
    // A path would let the page read files outside the folder.
    if (!Catalog.THRESHOLDS.names().contains(written) && !written.matches("[0-9./]{1,12}")) {
      throw Refused.bad("there is no threshold " + Refused.quoted(written));
    }
    return new Referred<>(written, Catalog.threshold(written));
  }

  /** The plans that the page asks for, named after what is done. */
  List<Plan> plans(JsonNode all) {
    if (all.size() > MOST_PLANS) {
      throw Refused.bad("expected up to " + MOST_PLANS + " plans besides waiting");
    }
    List<Plan> plans = new ArrayList<>();
    for (JsonNode one : all) {
      List<Control> controls = new ArrayList<>();
      List<String> words = new ArrayList<>();
      if (one.path("controls").size() > MOST_CONTROLS) {
        throw Refused.bad("expected up to " + MOST_CONTROLS + " actions in a plan");
      }
      for (JsonNode control : one.path("controls")) {
        String use = control.path("use").asText();
        String start = control.path("start").asText();
        if (use.isEmpty()) {
          controls.add(kept(control.path("place").asText()));
          continue;
        }
        if (!Catalog.CONTROLS.names().contains(use)) {
          throw Refused.bad("there is no control " + Refused.quoted(use));
        }
        controls.add(Catalog.control(use).at(day(start)));
        words.add("on " + start + " with " + use);
      }
      if (controls.isEmpty()) {
        continue;
      }
      controls.sort(Comparator.comparing(Control::from));
      plans.add(new Plan(name(one.path("name").asText("own plan"), controls, words), controls));
    }
    return UsualPlans.with(List.of(), plans);
  }

  /** The name that a plan has as long as nothing in it changes, or else one after what is done. */
  private String name(String given, List<Control> controls, List<String> words) {
    boolean same =
        old.stream()
            .flatMap(s -> s.plans().stream())
            .anyMatch(p -> p.name().equals(given) && p.controls().equals(controls));
    return same || words.size() < controls.size()
        ? given
        : PlanText.read(String.join(" and ", words)).name();
  }

  private Control kept(String place) {
    String[] at = place.split("[.]", -1);
    if (old.isPresent() && at.length == 2 && place.matches("[0-9]{1,3}[.][0-9]{1,3}")) {
      int p = Integer.parseInt(at[0]);
      int c = Integer.parseInt(at[1]);
      List<Plan> plans = old.get().plans();
      if (p < plans.size() && c < plans.get(p).controls().size()) {
        return plans.get(p).controls().get(c);
      }
    }
    throw Refused.bad("there is no such action in the study; load the files again");
  }

  private static LocalDate day(String text) {
    try {
      return LocalDate.parse(text);
    } catch (DateTimeException e) {
      throw Refused.bad("expected a day such as 2026-08-20, not " + Refused.quoted(text));
    }
  }
}
