package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.catalog.Catalog;
import broodtide.catalog.ControlTemplate;
import broodtide.catalog.HiveVisit;
import broodtide.control.Control;
import broodtide.control.ControlEffects;
import broodtide.control.Miticide;
import broodtide.control.MiticideCourse;
import broodtide.mite.StockTraits;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** The days on which a control asks for hands are those on which it does something. */
class HiveVisitsTest {
  private static final LocalDate DAY = LocalDate.of(2026, 6, 10);

  static List<ControlTemplate> shipped() {
    return Catalog.CONTROLS.names().stream().map(Catalog::control).toList();
  }

  private static List<LocalDate> days(Control control) {
    return ControlCautions.visits(control).stream().map(HiveVisit::day).toList();
  }

  /** What the engine is asked to do to bees, brood and queen has its day of work. */
  @ParameterizedTest
  @MethodSource("shipped")
  void noDeedIsLeftOut(ControlTemplate template) {
    Control control = template.at(DAY);
    Deeds deeds = new Deeds();
    control.act(deeds);
    assertThat(deeds.days).isNotEmpty();
    assertThat(days(control)).isSorted().doesNotHaveDuplicates().containsAll(deeds.days);
  }

  @ParameterizedTest
  @CsvSource({
    "drone-comb, 0 28 56",
    "drone-comb-part, 0 28 56 84",
    "amitraz-strips, 0 56",
    "queen-caging, 0 25",
    "trapping-comb, 0 24 36",
    "thymol, 0 15 30",
    "oxalic-dribble, 0",
    "split, 0 27",
    "total-brood-removal, 0"
  })
  void daysFromTheFirst(String name, String expected) {
    List<LocalDate> wanted =
        List.of(expected.split(" ")).stream().map(d -> DAY.plusDays(Long.parseLong(d))).toList();
    assertThat(days(Catalog.control(name).at(DAY))).isEqualTo(wanted);
  }

  @Test
  void eachApplicationHasItsDay() {
    Control vapour = Catalog.control("oxalic-vapour").at(DAY).repeated(3, 5).orElseThrow();
    assertThat(ControlCautions.visits(vapour))
        .containsExactly(
            new HiveVisit(DAY, "treat, 1 of 3"),
            new HiveVisit(DAY.plusDays(5), "treat, 2 of 3"),
            new HiveVisit(DAY.plusDays(10), "treat, 3 of 3"));
  }

  @Test
  void whatStaysInComesOutBetweenCoursesWithAGap() {
    Control strips = Catalog.control("formic-strips").at(DAY).repeated(2, 20).orElseThrow();
    assertThat(days(strips))
        .containsExactly(DAY, DAY.plusDays(7), DAY.plusDays(20), DAY.plusDays(27));
  }

  /** Nobody knows of a miticide of one's own what stays in the hive. */
  @Test
  void somethingMayStayInOfAMiticideThatIsNotInTheLibrary() {
    Miticide own = new Miticide("own", 9, 0.2, 0, 0, 0, 0, 40, Miticide.SupersRule.OFF);
    assertThat(days(MiticideCourse.once("own", own, DAY))).containsExactly(DAY, DAY.plusDays(9));
  }

  /** Formic, oxalic and lactic acid burn; nothing else in the library does so. */
  @ParameterizedTest
  @MethodSource("shipped")
  void acidsAreMarkedAndCautioned(ControlTemplate template) {
    boolean acid = template.substance().filter(s -> s.endsWith(" acid")).isPresent();
    assertThat(template.handling().acid()).isEqualTo(acid);
    if (acid) {
      assertThat(String.join(" ", template.cautions()))
          .contains("acid-proof gloves", "goggles", "supers");
    }
  }

  /** Takes down the days on which hands are needed. */
  private static final class Deeds implements ControlEffects {
    private final Set<LocalDate> days = new TreeSet<>();

    @Override
    public void stopLaying(LocalDate from, int length) {
      days.add(from);
      days.add(from.plusDays(length));
    }

    @Override
    public void rearDrones(LocalDate from, LocalDate until, double share) {
      days.add(from);
    }

    @Override
    public void cutDroneBrood(LocalDate day, double share) {
      days.add(day);
    }

    @Override
    public void moveBees(LocalDate day, double share) {
      days.add(day);
    }

    @Override
    public void moveBrood(LocalDate day, double share) {
      days.add(day);
    }

    @Override
    public void treat(Miticide substance, LocalDate from, LocalDate to, Predicate<LocalDate> acts) {
      for (LocalDate day = from; !day.isAfter(to); day = day.plusDays(substance.days())) {
        if (acts.test(day)) {
          days.add(day);
        }
      }
    }

    @Override
    public void replaceStock(StockTraits stock, ToDoubleFunction<LocalDate> takenOver) {
      // The new queen comes on the day on which the old one stops.
    }
  }
}
