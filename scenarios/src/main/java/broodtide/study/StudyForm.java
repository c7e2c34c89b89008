package broodtide.study;

import broodtide.catalog.Assumptions;
import broodtide.catalog.ClimateForm;
import broodtide.catalog.Referred;
import broodtide.catalog.ResistantMites;
import broodtide.catalog.Surroundings;
import broodtide.catalog.ThresholdForm;
import broodtide.colony.BeeRates;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.forms.ChoiceForm;
import broodtide.forms.DateForm;
import broodtide.forms.Field;
import broodtide.forms.Fields;
import broodtide.forms.ListForm;
import broodtide.forms.MonthDayForm;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.Placed;
import broodtide.forms.RatesForm;
import broodtide.forms.Source;
import broodtide.forms.TextForm;
import broodtide.mite.Immigration;
import broodtide.mite.MiteRates;
import broodtide.season.Climate;
import broodtide.season.DailyHighs;
import broodtide.season.YearSpan;
import broodtide.wash.ThresholdSet;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The fields of a study. */
public final class StudyForm {
  /** A plan as read, its controls with their places. */
  record Draft(String name, List<Placed<Control>> controls) {}

  /** The high of one day. */
  record High(LocalDate date, double high) {}

  /** Rates that differ from their defaults. */
  private record Overrides(Map<String, Double> bees, Map<String, Double> mites) {}

  private static final Field<String> SCHEMA =
      Field.optional(
          "$schema", TextForm.NOTE, "where an editor finds the schema; not read otherwise");
  private static final Field<String> TITLE =
      Field.required("title", TextForm.LINE, "one line for people");
  static final Field<Climate> CLIMATE =
      Field.required(
          "climate",
          new ClimateForm(),
          "a climate: its name in the library, the path of a file of your own, or written out"
              + " here");
  static final Field<Boolean> SOUTHERN =
      Field.optional(
          "hemisphere",
          ChoiceForm.of(List.of(false, true), south -> south ? "south" : "north"),
          false,
          "south turns the climate and the named surroundings by half a year");
  static final Field<LocalDate> START = Field.required("start", DateForm.DATE, "first day");
  static final Field<LocalDate> UNTIL =
      Field.required("until", DateForm.DATE, "last day, at most ten years after the start");
  static final Field<ColonyStart> COLONY =
      Field.required("colony", ColonyForm.FORM, "the colony on the first day");
  static final Field<Surroundings> SURROUNDINGS =
      Field.optional(
          "surroundings",
          ChoiceForm.of(List.of(Surroundings.values()), Surroundings::word),
          Surroundings.ISOLATED,
          "mites that come with bees from around, June to November (December to May in the south):"
              + " isolated none, sparse "
              + NumberForm.plain(Assumptions.usual().sparseArrivals())
              + " a day, dense "
              + NumberForm.plain(Assumptions.usual().denseArrivals())
              + " a day");

  private static final Field<MonthDay> WINDOW_FROM =
      Field.required("from", MonthDayForm.DAY, "first day, every year");
  private static final Field<MonthDay> WINDOW_TO =
      Field.required("to", MonthDayForm.DAY, "last day, every year; may lie after New Year");
  static final Field<Double> WINDOW_RATE =
      Field.required("perDay", NumberForm.of(0, 1000, "mites/day"), "mites that arrive");
  private static final ObjectForm<Immigration.Window> WINDOW =
      new ObjectForm<>(
          "immigration",
          "mites from outside over a stretch of the year",
          List.of(WINDOW_FROM, WINDOW_TO, WINDOW_RATE),
          in ->
              new Immigration.Window(
                  new YearSpan(in.need(WINDOW_FROM), in.need(WINDOW_TO)), in.need(WINDOW_RATE)),
          (w, out) -> {
            out.put(WINDOW_FROM, w.span().from());
            out.put(WINDOW_TO, w.span().to());
            out.put(WINDOW_RATE, w.perDay());
          });
  static final Field<List<Immigration.Window>> IMMIGRATION =
      Field.optional(
          "immigration",
          new ListForm<>(WINDOW, 1, 50),
          "instead of surroundings: mites from outside in figures, by the calendar of the place;"
              + " where stretches overlap they add");
  static final Field<String> WASHES =
      Field.optional("washes", TextForm.LINE, "file of washes (CSV), beside this one");

  private static final ListForm<Placed<Control>> CONTROLS =
      new ListForm<>(new Placed.Keeping<>(new ControlForm()), 0, 50);
  static final Field<List<Placed<Control>>> GIVEN =
      Field.optional(
          "given", CONTROLS, List.of(), "controls already carried out, which every plan shares");
  static final Field<String> PLAN_NAME =
      Field.required("name", TextForm.LINE, "short name, another for each plan");
  private static final Field<List<Placed<Control>>> PLAN_CONTROLS =
      Field.optional("controls", CONTROLS, List.of(), "what is done; nothing when left out");
  private static final ObjectForm<Draft> PLAN =
      new ObjectForm<>(
          "plan",
          "what is done in a season",
          List.of(PLAN_NAME, PLAN_CONTROLS),
          in -> new Draft(in.need(PLAN_NAME), in.need(PLAN_CONTROLS)),
          (p, out) -> {
            out.put(PLAN_NAME, p.name());
            out.put(PLAN_CONTROLS, p.controls());
          });
  static final Field<List<Placed<Draft>>> PLANS =
      Field.required(
          "plans", new ListForm<>(new Placed.Keeping<>(PLAN), 1, 50), "plans to compare");
  static final Field<Referred<ThresholdSet>> THRESHOLD =
      Field.optional(
          "threshold",
          new ThresholdForm(),
          ThresholdForm.usual(),
          "treatment threshold that washes are held against: a set of the library, the"
              + " path of your own file, or a figure, as \"3\" per 100 bees or \"9/300\"");

  static final Field<LocalDate> HIGH_DATE = Field.required("date", DateForm.DATE, "the day");
  private static final Field<Double> HIGH =
      Field.required("high", NumberForm.of(-60, 60, "degrees Celsius"), "its high");
  static final Field<List<Placed<High>>> HIGHS =
      Field.optional(
          "highs",
          new ListForm<>(
              new Placed.Keeping<>(
                  new ObjectForm<>(
                      "high",
                      "the high of one day",
                      List.of(HIGH_DATE, HIGH),
                      in -> new High(in.need(HIGH_DATE), in.need(HIGH)),
                      (h, out) -> {
                        out.put(HIGH_DATE, h.date());
                        out.put(HIGH, h.high());
                      })),
              0,
              4000),
          List.of(),
          "daily highs of the place, recorded or forecast; on all other days the climate's hold");
  private static final Field<List<String>> RESISTANT =
      Field.optional(
          "resistant",
          new ListForm<>(ChoiceForm.of(ResistantMites.substances(), s -> s), 0, 20),
          List.of(),
          "active substances that did badly here; they are taken to act as in apiaries with"
              + " resistant mites");

  /** What to say to a study that names its threshold as version 0.1 did. */
  private static final String OLD_THRESHOLD =
      "the field is called \"threshold\" now; change this line to \"threshold\": and the"
          + " name of a set, your own file, or a figure such as \"3\"";

  private static final Field<Map<String, Double>> BEES =
      Field.optional(
          "bees",
          RatesForm.of("bees", BeeRates.class, "rates of the bees that differ from the defaults")
              .replaced(ReplacedRates.BEES),
          Map.of(),
          "rates of the bees");
  private static final Field<Map<String, Double>> MITES =
      Field.optional(
          "mites",
          RatesForm.of("mites", MiteRates.class, "rates of the mites that differ from the defaults")
              .replaced(ReplacedRates.MITES),
          Map.of(),
          "rates of the mites");
  private static final Field<Overrides> OVERRIDES =
      Field.optional(
          "overrides",
          new ObjectForm<>(
              "overrides",
              "rates that differ from their defaults",
              List.of(BEES, MITES),
              in -> new Overrides(in.need(BEES), in.need(MITES)),
              (o, out) -> {
                out.put(BEES, o.bees());
                out.put(MITES, o.mites());
              }),
          new Overrides(Map.of(), Map.of()),
          "rates that differ from their defaults");

  /** The form of a study, for the reader, the writer and the schema. */
  public static final ObjectForm<Study> FORM =
      new ObjectForm<Study>(
              "study",
              "one colony in one place over one stretch of time, and plans to compare",
              List.of(
                  SCHEMA,
                  TITLE,
                  CLIMATE,
                  SOUTHERN,
                  START,
                  UNTIL,
                  COLONY,
                  SURROUNDINGS,
                  IMMIGRATION,
                  WASHES,
                  GIVEN,
                  PLANS,
                  THRESHOLD,
                  OVERRIDES,
                  HIGHS,
                  RESISTANT),
              StudyForm::make,
              StudyForm::spell)
          .replaced(Map.of("limits", OLD_THRESHOLD));

  private StudyForm() {}

  private static @Nullable Study make(Fields in) {
    Optional<Referred<Source>> washes = StudyChecks.attached(in);
    if (!StudyChecks.agree(in)) {
      return null;
    }
    Overrides overrides = in.need(OVERRIDES);
    Study study =
        new Study(
            in.need(TITLE),
            in.need(CLIMATE),
            in.need(SOUTHERN),
            in.need(START),
            in.need(UNTIL),
            in.need(COLONY),
            in.need(SURROUNDINGS),
            in.find(IMMIGRATION).orElse(List.of()),
            washes,
            values(in.need(GIVEN)),
            plans(in.need(PLANS)),
            in.need(THRESHOLD),
            overrides.bees(),
            overrides.mites(),
            highs(in.need(HIGHS)),
            in.need(RESISTANT));
    StudyChecks.colonyLives(in, study);
    return study;
  }

  private static void spell(Study s, ObjectForm.Written out) {
    out.put(TITLE, s.title());
    out.put(CLIMATE, s.climate());
    out.put(SOUTHERN, s.southern());
    out.put(START, s.start());
    out.put(UNTIL, s.until());
    out.put(COLONY, s.colony());
    if (s.immigration().isEmpty()) {
      out.put(SURROUNDINGS, s.surroundings());
    } else {
      out.put(IMMIGRATION, s.immigration());
    }
    s.washes().ifPresent(w -> out.put(WASHES, w.written()));
    out.put(GIVEN, s.given().stream().map(Placed::nowhere).toList());
    out.put(
        PLANS,
        s.plans().stream()
            .map(p -> new Draft(p.name(), p.controls().stream().map(Placed::nowhere).toList()))
            .map(Placed::nowhere)
            .toList());
    out.put(THRESHOLD, s.thresholds());
    out.put(OVERRIDES, new Overrides(s.bees(), s.mites()));
    out.put(
        HIGHS,
        s.highs().byDay().entrySet().stream()
            .map(day -> Placed.nowhere(new High(day.getKey(), day.getValue())))
            .toList());
    out.put(RESISTANT, s.resistant());
  }

  private static DailyHighs highs(List<Placed<High>> placed) {
    TreeMap<LocalDate, Double> days = new TreeMap<>();
    values(placed).forEach(h -> days.put(h.date(), h.high()));
    return new DailyHighs(days);
  }

  private static List<Plan> plans(List<Placed<Draft>> drafts) {
    return drafts.stream()
        .map(Placed::value)
        .map(d -> new Plan(d.name(), values(d.controls())))
        .toList();
  }

  private static <T> List<T> values(List<Placed<T>> placed) {
    return placed.stream().map(Placed::value).toList();
  }
}
