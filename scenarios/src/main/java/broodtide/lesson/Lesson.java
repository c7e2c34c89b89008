package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.study.Study;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * One lesson of the class page: learners say what they expect, then the engine shows what it plays.
 * A lesson holds questions and words; every number that it shows comes from the engine.
 *
 * @param name short name, also its address on the class page
 * @param number place in the row of lessons, from 1
 * @param title one line
 * @param story what is going on in the hive, in a few sentences
 * @param question what learners are asked
 * @param caution cautions for the work in the lesson, if it speaks of any
 * @param settings the colonies that the engine plays, at least one, none with washes
 * @param task what learners do before the reveal
 * @param charts what is drawn at the reveal, one to three
 * @param figures numbers read out at the reveal
 * @param reveal what to see in them
 * @param teacher note to the teacher
 * @param discussion questions to talk about afterwards
 * @param sources where the matter is known from; each line names a source or says "choice"
 */
public record Lesson(
    String name,
    int number,
    String title,
    String story,
    String question,
    Optional<String> caution,
    List<Study> settings,
    Task task,
    List<Chart> charts,
    List<Figure> figures,
    String reveal,
    String teacher,
    List<String> discussion,
    List<String> sources) {
  /** Copies the lists. */
  public Lesson {
    settings = List.copyOf(settings);
    charts = List.copyOf(charts);
    figures = List.copyOf(figures);
    discussion = List.copyOf(discussion);
    sources = List.copyOf(sources);
  }

  /** What learners do before the reveal. */
  public sealed interface Task permits Choose, Draw, Washes {}

  /**
   * They pick one answer.
   *
   * @param choices two to six, one of them right
   */
  public record Choose(List<Choice> choices) implements Task {
    /** Copies the list. */
    public Choose {
      choices = List.copyOf(choices);
    }

    /** {@return the right answer} */
    public Choice right() {
      return choices.stream().filter(Choice::right).findFirst().orElseThrow();
    }
  }

  /**
   * One answer.
   *
   * @param text the answer
   * @param right whether it is the right one
   * @param because what is said to whoever picked it
   */
  public record Choice(String text, boolean right, String because) {}

  /**
   * They draw a curve through given days. The value on the first day is shown to them.
   *
   * @param plan the plan whose curve it is
   * @param show what is drawn
   * @param days three to eight days, rising
   * @param top upper end of the drawing's axis, in the quantity's unit, above 0
   */
  public record Draw(String plan, Quantity show, List<LocalDate> days, double top) implements Task {
    /** Copies the list. */
    public Draw {
      days = List.copyOf(days);
    }
  }

  /**
   * They guess between which counts most washes of bees from one colony on one day will lie.
   *
   * @param plan the plan whose colony it is
   * @param on the day
   * @param bees bees in a wash, 50 to 1,000
   * @param washes washes drawn, 5 to 100
   */
  public record Washes(String plan, LocalDate on, int bees, int washes) implements Task {}

  /**
   * One chart of the reveal.
   *
   * @param title what it shows, with the unit
   * @param show quantities; with several plans there is one only, drawn once for each plan
   */
  public record Chart(String title, List<Quantity> show) {
    /** Copies the list. */
    public Chart {
      show = List.copyOf(show);
    }
  }

  /**
   * One number of the reveal.
   *
   * @param say what it is
   * @param plan the plan
   * @param show the quantity
   * @param of when there, the number is the share of this quantity that the first one makes up
   * @param on the day
   */
  public record Figure(
      String say, String plan, Quantity show, Optional<Quantity> of, LocalDate on) {}

  /**
   * One colony under one plan.
   *
   * @param name the plan's name, which no other line has
   * @param setting the colony
   * @param scenario what the engine plays
   */
  public record Line(String name, Study setting, Scenario scenario) {}

  /** {@return every colony under every plan, in the order of the file} */
  public List<Line> lines() {
    List<Line> out = new ArrayList<>();
    for (Study setting : settings) {
      for (Scenario scenario : setting.scenarios()) {
        out.add(new Line(scenario.plan().name(), setting, scenario));
      }
    }
    return List.copyOf(out);
  }

  /**
   * {@return the line of a plan}
   *
   * @param plan name of one of the plans of the lesson
   * @throws IllegalArgumentException when there is none of that name
   */
  public Line line(String plan) {
    return lines().stream()
        .filter(line -> line.name().equals(plan))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("lesson " + name + " has no plan \"" + plan + "\""));
  }
}
