package broodtide.classroom;

import broodtide.assessment.ControlCautions;
import broodtide.assessment.PlanCheck;
import broodtide.assessment.PlanRun;
import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Control;
import broodtide.control.Plan;
import broodtide.engine.Quantity;
import broodtide.fit.Prior;
import broodtide.words.Digits;
import broodtide.words.NotShown;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** A season in a sentence or two, for eyes and for ears. */
final class Sentences {
  /** Bees in a usual wash. */
  static final int WASH = 300;

  private final Explorer.Colony colony;
  private final Season season;

  Sentences(Explorer.Colony colony) {
    this.colony = colony;
    season = colony.season();
  }

  /** What is done, one sentence for each action, with what trials saw of it. */
  List<String> actions() {
    return colony.actions().stream().map(Sentences::action).toList();
  }

  private static String action(ExplorerState.Action action) {
    ControlTemplate template = Catalog.control(action.control());
    return day(action.on())
        + ": "
        + template.title()
        + "."
        + template.efficacy().map(e -> " " + took(e)).orElse("");
  }

  private static String took(ControlTemplate.Efficacy e) {
    return "In trials it killed "
        + Digits.percents(e.share(-Prior.NINE_IN_TEN), e.share(Prior.NINE_IN_TEN))
        + " of the mites (90 % interval of one colony).";
  }

  /** The day that matters most: when the first winter bees are raised. */
  private LocalDate turn() {
    List<ClimateYear.Stretch> winterBees = colony.place().winterBees();
    boolean south = colony.place().climate().southern();
    return winterBees.isEmpty() ? ExplorerState.usual("", south) : winterBees.get(0).from();
  }

  /** What a wash would find when it matters, against the threshold. */
  String wash() {
    LocalDate on = turn();
    Optional<Double> infestation = season.at(Quantity.INFESTATION, on);
    if (infestation.isEmpty()) {
      return "The colony does not live to " + day(on) + ", when its winter bees would be raised.";
    }
    long mites = Math.round(infestation.get() * PlanRun.SHOWN_BY_A_WASH * WASH / 100);
    String threshold =
        colony
            .place()
            .thresholdOn(on)
            .map(l -> "; the treatment threshold then is " + Math.round(l * WASH / 100))
            .orElse("; there is no treatment threshold then");
    return String.format(
        Locale.ROOT,
        "On %s, as winter bees begin to be raised, a wash of %d bees finds %s%s.",
        day(on),
        WASH,
        mites > 150 ? "more than 150 mites" : "about " + Digits.counted(mites, "mite"),
        threshold);
  }

  /** Infested winter-bee brood and winter loss; nothing where they cannot be told. */
  String winter() {
    if (colony.place().low().isEmpty() || colony.place().winterBees().isEmpty()) {
      return "";
    }
    ClimateYear.Stretch raised = colony.place().winterBees().get(0);
    return "Infested winter-bee brood "
        + Digits.percent(season.infestedBrood(raised.from(), raised.to()))
        + "; winter loss "
        + Digits.chance(season.winterLoss(colony.place().low().get()))
        + ".";
  }

  /** How it ends. */
  String end() {
    return season
        .lost()
        .map(on -> lost(on))
        .orElseGet(
            () -> {
              LocalDate last = season.lastShown();
              double bees = season.at(Quantity.ADULTS, last).orElse(0.0);
              double atStart = season.at(Quantity.ADULTS, season.start()).orElse(bees);
              return "On "
                  + day(last)
                  + " the colony has about "
                  + Digits.two(bees)
                  + " bees; it began with "
                  + Digits.two(atStart)
                  + "."
                  + NotShown.inWinter(colony.place().climate()).map(s -> " " + s).orElse("");
            });
  }

  private static String lost(LocalDate on) {
    return "From " + day(on) + " on the colony is more likely dead than alive.";
  }

  /** What stands against the days chosen, and cautions with what is done. */
  List<String> notes() {
    Plan plan = colony.scenario().plan();
    List<String> out = new ArrayList<>(PlanCheck.of(plan, colony.place().climate()));
    for (Control control : plan.controls()) {
      String cautions = String.join(" ", ControlCautions.of(control));
      if (!cautions.isEmpty()) {
        out.add(control.name() + ": " + cautions);
      }
    }
    return out;
  }

  /** A day as people say it, {@code 15 August}. */
  static String day(LocalDate day) {
    String month = day.getMonth().name();
    return day.getDayOfMonth()
        + " "
        + month.charAt(0)
        + month.substring(1).toLowerCase(Locale.ROOT);
  }

  /** The same in short, {@code 15 Aug}. */
  static String brief(LocalDate day) {
    String whole = day(day);
    return whole.substring(0, whole.indexOf(' ') + 4);
  }
}
