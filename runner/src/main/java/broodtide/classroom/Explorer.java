package broodtide.classroom;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlKind;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.ColonyModel;
import broodtide.engine.Scenario;
import broodtide.engine.SimulatedColony;
import broodtide.mite.Immigration;
import broodtide.season.YearSpan;
import broodtide.web.Query;
import broodtide.web.Refused;
import java.time.LocalDate;
import java.time.MonthDay;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the explorer lets one set, and the colony that comes of it. */
public final class Explorer {
  /** First day of every colony: an invented year from March to the March after. */
  public static final LocalDate FIRST_DAY = LocalDate.of(2026, 3, 1);

  /** Last day of every colony. */
  static final LocalDate LAST_DAY = LocalDate.of(2027, 3, 31);

  static final Dial MITES =
      new Dial("mites", "Mites on 1 March", "mites per 100 bees", 0, 10, 0.1, 0.5);
  static final Dial BROOD =
      new Dial(
          "brood", "Laying factor of the queen", "times an average queen's", 0.5, 1.5, 0.05, 1);
  static final Dial ARRIVALS =
      new Dial(
          "arrivals", "Mites from other hives", "mites a day, July to November", 0, 40, 0.5, 0);

  /** Ways to deal with drone comb. */
  static final List<String> COMB = List.of("none", "part", "all");

  static final LocalDate COMB_FROM = LocalDate.of(2026, 4, 1);
  static final LocalDate COMB_USUAL = LocalDate.of(2026, 4, 25);
  static final LocalDate COMB_TO = LocalDate.of(2026, 8, 31);
  static final LocalDate TREAT_USUAL = LocalDate.of(2026, 8, 15);
  static final LocalDate TREAT_TO = LocalDate.of(2027, 2, 28);

  /** No treatment. */
  static final String NONE = "none";

  private static final List<String> NAMES =
      List.of(
          "climate",
          MITES.name(),
          BROOD.name(),
          "comb",
          "combon",
          "treatment",
          "treaton",
          ARRIVALS.name());

  /** When mites arrive: as counted by Frey & Rosenkranz 2014. */
  private static final YearSpan ARRIVING = new YearSpan(MonthDay.of(7, 1), MonthDay.of(11, 30));

  private static final String COMB_KIND = "drone-comb";

  private final Places places;
  private final List<ControlTemplate> treatments;

  Explorer(Places places) {
    this.places = places;
    treatments =
        Catalog.CONTROLS.names().stream()
            .map(Catalog::control)
            .filter(t -> !ControlKind.of(t.usual()).word().equals(COMB_KIND))
            .toList();
  }

  /**
   * A colony as it was set.
   *
   * @param place where it lives
   * @param scenario what is done
   * @param member the colony
   */
  record Colony(ClimateYear place, Scenario scenario, SimulatedColony member) {}

  /** All treatments that can be chosen. */
  List<ControlTemplate> treatments() {
    return treatments;
  }

  /**
   * Reads a colony from an address.
   *
   * @param raw what stands behind the question mark
   * @throws Refused when a value is not allowed
   */
  Colony read(@Nullable String raw) {
    Query in = Query.of(raw, NAMES);
    ClimateYear place = places.place(in.word("climate", places.first(), places.names()));
    List<Control> controls = new ArrayList<>();
    String comb = in.word("comb", NONE, COMB);
    LocalDate combOn = in.date("combon", COMB_USUAL, COMB_FROM, COMB_TO);
    if (!comb.equals(NONE)) {
      String template = comb.equals("all") ? COMB_KIND : COMB_KIND + "-part";
      controls.add(Catalog.control(template).at(combOn));
    }
    String treatment = in.word("treatment", NONE, treatmentNames());
    LocalDate treatOn = in.date("treaton", TREAT_USUAL, FIRST_DAY, TREAT_TO);
    treatments.stream()
        .filter(t -> t.name().equals(treatment))
        .forEach(t -> controls.add(t.at(treatOn)));
    double arrivals = ARRIVALS.in(in);
    Immigration immigration = new Immigration(List.of(new Immigration.Window(ARRIVING, arrivals)));
    Scenario scenario =
        new Scenario(
            ColonyModel.in(place.climate()).with(immigration),
            new Plan("the colony", controls),
            FIRST_DAY,
            Math.toIntExact(LAST_DAY.toEpochDay() - FIRST_DAY.toEpochDay()));
    SimulatedColony member = new SimulatedColony(BROOD.in(in), 1, MITES.in(in), 1, 1, List.of());
    return new Colony(place, scenario, member);
  }

  private List<String> treatmentNames() {
    return Stream.concat(Stream.of(NONE), treatments.stream().map(ControlTemplate::name)).toList();
  }
}
