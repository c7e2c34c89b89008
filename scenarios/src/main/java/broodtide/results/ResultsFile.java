package broodtide.results;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Caution;
import broodtide.assessment.ColonyCase;
import broodtide.assessment.ControlCautions;
import broodtide.assessment.CountOutlook;
import broodtide.assessment.CountReading;
import broodtide.assessment.CountSheet;
import broodtide.assessment.Decision;
import broodtide.assessment.PlanRun;
import broodtide.catalog.ControlTemplate;
import broodtide.control.Plan;
import broodtide.decision.ApiaryTreatmentCheck;
import broodtide.decision.CountedEfficacy;
import broodtide.decision.ResistanceCheck;
import broodtide.decision.RuleTrial;
import broodtide.decision.TreatmentCheck;
import broodtide.decision.WashWorth;
import broodtide.decision.Windows;
import broodtide.fit.Backtest;
import broodtide.fit.GrowthFit;
import broodtide.fit.PooledGrowth;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.Writer;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Results of a command as JSON, format {@value #FORMAT}, described field by field by the JSON
 * Schema that {@link #schema()} returns.
 *
 * <p>Dates are ISO 8601 days; infestations are mites per 100 adult bees of the colony; shares and
 * chances run from 0 to 1; a band is {@code {q05,q25,median,q75,q95}}; what is not known is null.
 * Numbers carry four significant digits. Readers should pass over fields that they do not know.
 *
 * <p>Every file holds {@code format}, {@code tool}, {@code program}, {@code notes}, {@code caution}
 * and {@code colonies}, and {@code seed} and {@code simulatedColonies} where colonies were
 * simulated. Where plans were played for several hives, {@code sheet} has the apiary, the most
 * urgent hive first. A colony holds its case, the {@code decision}, which has the same keys and
 * figures whatever the tool, and what the tool found. Colonies that could not be judged stand under
 * {@code leftOut} with the reason. The same input, seed and version give the same bytes.
 */
public final class ResultsFile {
  /** Name and version of the format. */
  public static final String FORMAT = "broodtide-results-2";

  private static final String CAUTION = "caution";

  private static final String SCHEMA = "/schema/results-2.json";

  private final ObjectNode root;
  private final ArrayNode colonies;
  private final Map<String, Decision> decisions = new HashMap<>();
  private boolean acid;

  /**
   * An empty file of a command that simulates no colonies.
   *
   * @param tool the command
   * @param version version of the program
   * @param notes what was assumed, in sentences
   */
  public ResultsFile(String tool, String version, List<String> notes) {
    this(JsonFigures.head(FORMAT, tool, version), notes);
  }

  /**
   * An empty file of a command that simulates colonies.
   *
   * @param tool the command
   * @param version version of the program
   * @param seed seed of the random numbers
   * @param members simulated colonies
   * @param notes what was assumed, in sentences
   */
  public ResultsFile(String tool, String version, long seed, int members, List<String> notes) {
    this(
        JsonFigures.head(FORMAT, tool, version).put("seed", seed).put("simulatedColonies", members),
        notes);
  }

  private ResultsFile(ObjectNode head, List<String> notes) {
    root = head;
    notes.forEach(root.putArray("notes")::add);
    root.put(CAUTION, Caution.ANSWER);
    colonies = root.putArray("colonies");
  }

  /** {@return the JSON Schema (2020-12) of the format} */
  public static String schema() {
    return JsonFigures.text(JsonFigures.resource(SCHEMA));
  }

  /** {@return what is to be minded about all that was added so far} */
  public String caution() {
    return Caution.answer(acid);
  }

  private void mind(boolean anAcid) {
    acid |= anAcid;
    root.put(CAUTION, caution());
  }

  private void mind(Stream<Plan> plans) {
    mind(ControlCautions.acid(plans.toList()));
  }

  private void mindControls(Stream<ControlTemplate> controls) {
    mind(controls.anyMatch(control -> control.handling().acid()));
  }

  /**
   * Names a colony that could not be judged.
   *
   * @param c the colony that nothing can be said of
   * @param reason why not, for people
   */
  public void leaveOut(ColonyCase c, String reason) {
    root.withArray("/leftOut").addObject().put("colony", c.colony()).put("reason", reason);
  }

  /**
   * Says what is decided of a colony, before its other figures are added.
   *
   * @param colony its name
   * @param decision the decision that its plans lead to
   */
  public void decided(String colony, Decision decision) {
    decisions.put(colony, decision);
  }

  /** Begins a colony. */
  private ObjectNode colony(ColonyCase c) {
    ObjectNode node = colonies.addObject();
    node.put("colony", c.colony());
    if (!c.yard().isEmpty()) {
      node.put("yard", c.yard());
    }
    node.put("climate", c.model().climate().name());
    node.put("start", c.start().toString());
    node.put("now", c.now().toString());
    node.put("until", c.until().toString());
    node.put("thresholdSet", c.thresholds().name());
    Decision decision = decisions.get(c.colony());
    if (decision != null) {
      DecisionJson.write(node, decision);
    }
    return node;
  }

  /**
   * Adds one colony with its plans, and their decision where none was said before.
   *
   * @param result the colony and its plans
   */
  public void add(ColonyResult result) {
    ColonyCase c = result.comparison().colony();
    decisions.putIfAbsent(c.colony(), result.comparison().decision());
    mind(result.comparison().runs().stream().map(PlanRun::plan));
    PlansJson.write(colony(c), result);
  }

  /**
   * Adds the windows of a colony.
   *
   * @param w a finished search of windows
   */
  public void add(Windows w) {
    mindControls(w.rows().stream().map(Windows.Row::control));
    WindowsJson.write(colony(w.colony()).putObject("windows"), w);
  }

  /**
   * Adds the rules of a colony.
   *
   * @param trial a finished trial of rules
   */
  public void add(RuleTrial trial) {
    mindControls(trial.results().stream().flatMap(r -> r.rule().controls().stream()));
    RulesJson.write(colony(trial.colony()), trial);
  }

  /**
   * Adds what washes on several days are worth for a colony.
   *
   * @param c the colony
   * @param worth the worth of a wash, by wash day
   */
  public void addWorth(ColonyCase c, List<WashWorth> worth) {
    mind(worth.stream().flatMap(WashWorth::plans));
    WorthJson.write(colony(c), worth);
  }

  /**
   * Adds what is to be said of a treatment.
   *
   * @param check the model's reckoning
   * @param counted what the counts alone say
   * @param neighbour the same against a neighbour
   * @param resistance what the washes say of resistant mites, where the treatment fell short
   */
  public void add(
      TreatmentCheck check,
      Optional<CountedEfficacy> counted,
      Optional<CountedEfficacy> neighbour,
      Optional<ResistanceCheck> resistance) {
    TreatmentJson.write(
        colony(check.colony()).putObject("treatment"), check, counted, neighbour, resistance);
  }

  /**
   * Adds what treated hives of one apiary say together.
   *
   * @param apiary the hives
   * @param resistance what they say of resistant mites, where the treatment fell short
   */
  public void add(ApiaryTreatmentCheck apiary, Optional<ResistanceCheck> resistance) {
    TreatmentJson.write(root.putObject("apiaryTreatment"), apiary, resistance);
  }

  /**
   * Adds forecasts of washes that were held out, and their marks together.
   *
   * @param cases the colonies, by whose names the washes are told apart
   * @param report their backtest
   */
  public void add(List<ColonyCase> cases, Backtest.Report report) {
    cases.forEach(c -> BacktestJson.write(colony(c), c.colony(), report));
    BacktestJson.marks(root.putObject("marks"), report);
  }

  /**
   * Adds how fast mites grow over all hives of the file together.
   *
   * @param together the growth over the hives
   */
  public void add(PooledGrowth together) {
    GrowthJson.write(root.putObject("growthTogether"), together);
  }

  /**
   * Adds how fast the mites of a colony grow.
   *
   * @param c the colony
   * @param fit its growth
   * @param treated days of treatment that part its washes
   * @param ahead the day of a wash to forecast; empty for none
   * @param bees bees in that wash
   */
  public void addGrowth(
      ColonyCase c, GrowthFit fit, List<LocalDate> treated, Optional<LocalDate> ahead, int bees) {
    GrowthJson.write(colony(c).putObject("growth"), fit, treated, ahead, bees);
  }

  /**
   * Adds what one count says of a colony.
   *
   * @param reading the count in its season
   * @param precision how sure such a count is
   * @param outlook the colony of which this count alone is known, and where it would stand
   */
  public void addCount(CountReading reading, CountPrecision precision, CountOutlook outlook) {
    decisions.put(outlook.colony().colony(), outlook.decision());
    ObjectNode node = colony(outlook.colony());
    CountJson.write(node.putObject("count"), reading, precision);
    outlook.ahead().ifPresent(o -> CountJson.ahead(node.putObject("leftAlone"), o));
  }

  /**
   * Adds what mites on one board say of a colony.
   *
   * @param outlook the colony of which this board alone is known, and where it would stand
   */
  public void addBoard(CountOutlook outlook) {
    decisions.put(outlook.colony().colony(), outlook.decision());
    ObjectNode node = colony(outlook.colony());
    PlansJson.boards(node, outlook.colony());
    JsonFigures.band(node.putObject("today"), outlook.today());
    outlook.ahead().ifPresent(o -> CountJson.ahead(node.putObject("leftAlone"), o));
  }

  /**
   * Adds the sheet of the apiary, whose figures are those of the decisions of its colonies.
   *
   * @param sheet the apiary
   * @param plans one plan for the whole apiary, see {@link ApiarySheet#together}
   */
  public void add(ApiarySheet sheet, List<ApiaryPlan> plans) {
    mind(sheet.named().stream());
    SheetJson.write(root.putObject("sheet"), sheet, plans);
  }

  /**
   * Adds the counts of one day, each read by itself; such a file has no colonies.
   *
   * @param sheet the counts
   * @param precision how sure each is
   */
  public void add(CountSheet sheet, Function<CountReading, CountPrecision> precision) {
    CountJson.write(root.putObject("counts"), sheet, precision);
  }

  /**
   * {@return one colony on a line of its own, as the object that stands for it in {@code colonies}}
   *
   * @param result the colony and its plans
   * @param decision what is decided of it
   */
  public static String line(ColonyResult result, Decision decision) {
    ResultsFile one = new ResultsFile("", "", List.of());
    one.decided(result.comparison().colony().colony(), decision);
    one.add(result);
    return JsonFigures.line(one.colonies.get(0));
  }

  /**
   * Writes the file's text with colonies that are not held in memory.
   *
   * @param lines each from {@link #line}
   * @param out takes the text
   */
  public void write(Iterator<String> lines, Writer out) {
    JsonFigures.text(root, "colonies", lines, out);
  }

  /** {@return the file's text} */
  public String text() {
    return JsonFigures.text(root);
  }
}
