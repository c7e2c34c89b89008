package broodtide.lesson;

import broodtide.engine.Quantity;
import broodtide.engine.Scenario;
import broodtide.study.Study;
import broodtide.wash.WashMethod;
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
 * @param records a table that learners see with the story; no rows for none
 * @param caution cautions for the work in the lesson, if it speaks of any
 * @param settings the colonies that the engine plays, at least one, none with washes
 * @param task what learners do before the reveal
 * @param charts what is drawn at the reveal, one to three
 * @param judged hives of which the reveal shows what their washes say of a treatment; none for none
 * @param figures numbers read out at the reveal
 * @param reveal what to see in them
 * @param teacher note to the teacher
 * @param discussion questions to talk about afterwards, with answers for the teacher
 * @param evening the time plan of one evening
 * @param claims what the words say and the figures must show, at least one
 * @param sources where the matter is known from; each line names a source or says "choice"
 */
public record Lesson(
    String name,
    int number,
    String title,
    String story,
    String question,
    List<List<String>> records,
    Optional<String> caution,
    List<Study> settings,
    Task task,
    List<Chart> charts,
    List<Judged> judged,
    List<Figure> figures,
    String reveal,
    String teacher,
    List<Topic> discussion,
    List<EveningStep> evening,
    List<Claim> claims,
    List<String> sources) {
  /** Copies the lists. */
  public Lesson {
    records = records.stream().map(List::copyOf).toList();
    evening = List.copyOf(evening);
    claims = List.copyOf(claims);
    settings = List.copyOf(settings);
    charts = List.copyOf(charts);
    judged = List.copyOf(judged);
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
   * @param direction whether only rising and falling counts, not how high the curve runs
   */
  public record Draw(
      String plan, Quantity show, List<LocalDate> days, double top, boolean direction)
      implements Task {
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
   * @param method what the mites are taken off with; each method leaves some of them behind
   */
  public record Washes(String plan, LocalDate on, int bees, int washes, WashMethod method)
      implements Task {}

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
   * A hive whose washes before and after a treatment say what the treatment did.
   *
   * @param hive its name
   * @param plan the plan whose one miticide it was given, and whose setting says where it stands
   * @param washes two to six, rising by day, at least one up to the treatment and one after it
   */
  public record Judged(String hive, String plan, List<Count> washes) {
    /** Copies the list. */
    public Judged {
      washes = List.copyOf(washes);
    }
  }

  /**
   * A count of a hive.
   *
   * @param date the day
   * @param mites mites found, at most as many as bees
   * @param bees bees in the wash
   */
  public record Count(LocalDate date, int mites, int bees) {}

  /**
   * One number of the reveal.
   *
   * @param say what it is
   * @param measure the number
   */
  public record Figure(String say, Measure measure) {}

  /** A number that the engine plays, or one that is given. */
  public sealed interface Measure permits OnDay, Result, Given {}

  /**
   * A quantity on a day.
   *
   * @param plan the plan
   * @param show the quantity
   * @param of when there, the number is the share of this quantity that the first one makes up
   * @param on the day
   */
  public record OnDay(String plan, Quantity show, Optional<Quantity> of, LocalDate on)
      implements Measure {}

  /**
   * What a season comes to.
   *
   * @param plan the plan
   * @param result which result
   */
  public record Result(String plan, LessonResult result) implements Measure {}

  /**
   * A number that is given.
   *
   * @param number the number, in the unit of what it is held against
   */
  public record Given(double number) implements Measure {}

  /**
   * What the words of a lesson say, so that the engine can be asked whether it is so: one number is
   * larger than another.
   *
   * @param say the claim in words
   * @param larger the larger number
   * @param smaller the smaller one
   * @param times the larger one is at least so many times the smaller one, above 0
   */
  public record Claim(String say, Measure larger, Measure smaller, double times) {}

  /**
   * A question to talk about.
   *
   * @param ask the question
   * @param answer what a teacher can say, on the teacher's sheet only
   */
  public record Topic(String ask, String answer) {}

  /**
   * A part of the evening.
   *
   * @param minutes how long, 1 to 120
   * @param what what is done
   */
  public record EveningStep(int minutes, String what) {}

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
