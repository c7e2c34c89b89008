package broodtide.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowable;

import broodtide.forms.BadInput;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Each fault is said once, with its line, its path, and what is allowed. */
class StudyFaultsTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        // names and kinds
        "\"title\": \"t\", | | line 1, column 1, $: the field \"title\" is missing: one line",
        "\"title\": \"t\" | \"titel\": \"t\" | line 2, column 3, $.titel: there is no such field;"
            + " expected one of $schema, title, climate",
        "\"title\": \"t\" | \"title\": \"t\", \"title\": \"u\" | line 2, column 17, $.title: the"
            + " field stands twice, first on line 2; remove one",
        "\"title\": \"t\" | \"title\": null | $.title: \"null\" is not valid; expected text",
        "\"title\": \"t\" | \"title\": \" \" | $.title: \" \" is not valid; expected text of 1",
        "\"title\": \"t\" | \"title\": 7 | $.title: \"7\" is not valid; expected text in",
        "\"temperate\" | \"temprate\" | line 3, column 14, $.climate: \"temprate\" is not valid; "
            + "known are boreal, cold-continental, cool-maritime, mild-maritime, subtropical,"
            + " temperate, warm-temperate; or give the path of a file of your own, ending in .json;"
            + " did you mean \"temperate\"?",
        "\"temperate\" | \"mine.json\" | $.climate: \"mine.json\" is not valid; there is no such",
        "\"temperate\" | 5 | $.climate: \"5\" is not valid; expected a name of the library",
        // highs and resistance
        "\"plans\" | \"resistant\": [\"amitras\"], \"plans\" | $.resistant[0]: \"amitras\" is not"
            + " valid; expected one of \"amitraz\", \"pyrethroid\"; did you mean \"amitraz\"?",
        "\"plans\" | \"highs\": [{\"date\": \"2027-08-01\", \"high\": 88}], \"plans\" |"
            + " $.highs[0].high: \"88\" is not valid; expected a number, -60 to 60",
        "\"plans\" | \"highs\": [{\"date\": \"2027-08-01\", \"high\": 8}, {\"date\":"
            + " \"2027-08-01\", \"high\": 9}], \"plans\" | $.highs[1].date: \"2027-08-01\" is not"
            + " valid; the day has a high on line 7 already; remove one",
        // dates
        "2027-03-01 | 2027-02-30 | line 4, column 12, $.start: \"2027-02-30\" is not valid; "
            + "there is no such day; 2027-02 has the days 01 to 28",
        "2027-03-01 | 2027-13-01 | $.start: \"2027-13-01\" is not valid; there is no month 13",
        "2027-03-01 | 1.3.2027 | $.start: \"1.3.2027\" is not valid; expected a date as",
        "2027-03-01 | 1027-03-01 | $.start: \"1027-03-01\" is not valid; expected the years",
        "2027-12-31 | 2027-03-01 | $.until: \"2027-03-01\" is not valid; expected 2027-03-02"
            + " to 2037-03-07",
        "2027-12-31 | 2057-03-01 | $.until: \"2057-03-01\" is not valid; expected 2027-03-02",
        // numbers
        "\"infestation\": 1 | \"infestation\": -1 | line 6, column 42, $.colony.infestation: \"-1\""
            + " is not valid; expected a number, 0 to 300 (mites per 100 adult bees)",
        "\"infestation\": 1 | \"infestation\": 1e999 | \"1e999\" is not valid; expected a",
        "\"infestation\": 1 | \"infestation\": \"1\" | expected a number, 0 to 300 (mites per"
            + " 100 adult bees), without quotes",
        "\"infestation\": 1 | \"infestation\": 1, \"strength\": 4 | $.colony.strength: \"4\" is not"
            + " valid; expected a number, 0.05 to 3",
        "\"infestation\": 1 | \"infestation\": 1, \"adults\": 9000, \"framesOfBees\": 5 |"
            + " $.colony.framesOfBees: \"5\" is not valid; expected nothing beside adults",
        "\"infestation\": 1 | \"infestation\": 1, \"adults\": 120000 | $.colony: the colony"
            + " has 120000 bees; allowed on 2027-03-01 in this climate is",
        ", \"infestation\": 1 | | $.colony: nothing tells how many mites there are",
        "{\"name\": \"A\", \"infestation\": 1} | [] | $.colony: \"[]\" is not valid; expected"
            + " an object",
        // plans and controls
        "\"wait\" | \"cage\" | $.plans[1].name: \"cage\" is not valid; the plan on line 8 has",
        "queen-caging | queen-cage | line 10, column 16, $.plans[1].controls[0].kind:"
            + " \"queen-cage\" is not valid; \"kind\" is one of miticide, drone-comb,"
            + " queen-caging, trapping-comb, split, requeening; did you mean \"queen-caging\"?",
        "\"kind\": \"queen-caging\", | | $.plans[1].controls[0]: a control needs \"use\" with a"
            + " name of the library, or \"kind\" with one of miticide,",
        "2027-12-31 | 2027-06-30 | $.plans[1].controls[0].from: \"2027-07-01\" is not valid; "
            + "expected 2027-03-01 to 2027-06-30, the days of the study",
        "2027-07-25 | 2027-06-25 | $.plans[1].controls[0].to: \"2027-06-25\" is not valid; expected"
            + " 2027-07-01 to 2027-10-29",
        "\"2027-07-25\"} | \"2027-07-25\"}, {\"kind\": \"split\", \"on\": \"2027-07-20\","
            + " \"beesLeaving\": 0, \"broodLeaving\": 0, \"daysWithoutLaying\": 9} |"
            + " $.plans[1].controls[1]: plan \"cage\": the brood breaks \"caged queen\" (2027-07-01"
            + " to 2027-07-25) and \"split\" (2027-07-20 to 2027-07-28) overlap",
        "\"plans\": | \"given\": [{\"kind\": \"queen-caging\", \"from\": \"2027-07-10\", \"to\":"
            + " \"2027-08-01\"}], \"plans\": | $.plans[1].controls[0]: plan \"cage\": the brood"
            + " breaks",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"kind\": \"drone-comb\","
            + " \"inserted\": \"2027-11-30\", \"cuts\": [\"2027-12-30\", \"2028-01-05\"],"
            + " \"taken\": 1, \"droneShare\": 0.1}]} | $.plans[0].controls[0].cuts[1]:"
            + " \"2028-01-05\" is not valid; the cut on 2028-01-05 is never reached",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"kind\": \"drone-comb\","
            + " \"inserted\": \"2027-05-30\", \"cuts\": [\"2027-05-01\"], \"taken\": 1,"
            + " \"droneShare\": 0.1}]} | $.plans[0].controls[0].cuts: cuts is 2027-05-01; expected"
            + " dates that rise and lie after 2027-05-30",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"kind\": \"miticide\","
            + " \"name\": \"x\", \"start\": \"2027-05-30\", \"days\": 9, \"onBees\": 1,"
            + " \"inCells\": 0, \"coolest\": 12, \"warmest\": 10}]} |"
            + " $.plans[0].controls[0].warmest: \"10\" is not valid; expected 12 to 60",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"kind\": \"miticide\","
            + " \"name\": \"x\", \"start\": \"2027-05-30\", \"days\": 9, \"onBees\": 1,"
            + " \"inCells\": 0, \"coolest\": 2, \"warmest\": 10, \"applications\": 2, \"every\": 3"
            + "}]} | $.plans[0].controls[0].every: \"3\" is not valid; expected 9 to 120",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"use\": \"oxalic-drible\","
            + " \"start\": \"2027-12-01\"}]} | $.plans[0].controls[0].use: \"oxalic-drible\" is not"
            + " valid; known are amitraz-strips,",
        "{\"name\": \"wait\"} | {\"name\": \"wait\", \"controls\": [{\"use\": \"split\", \"start\":"
            + " \"2027-06-01\", \"applications\": 2}]} | $.plans[0].controls[0].applications: \"2\""
            + " is not valid; only miticides are given several times",
        "\"plans\": | \"limits\": \"spring\", \"plans\": | the field is called"
            + " \"threshold\" now; change this line",
        "\"plans\": | \"threshold\": \"nowhere\", \"plans\": | $.threshold: \"nowhere\" is not"
            + " valid; known are ages-2015",
        "\"plans\": | \"washes\": \"no.csv\", \"plans\": | $.washes: \"no.csv\" is not valid;"
            + " there is no such file no.csv",
        "\"plans\": | \"washes\": \"\\u0000.csv\", \"plans\": | $.washes: \" .csv\" is not valid; "
            + "it holds the hidden character U+0000 (NULL)",
        "\"plans\": | \"surroundings\": \"dens\", \"plans\": | $.surroundings: \"dens\" is not"
            + " valid; expected one of \"isolated\", \"sparse\", \"dense\"; did you mean"
            + " \"dense\"?",
        "\"plans\": | \"surroundings\": \"dense\", \"immigration\": [{\"from\": \"07-01\", \"to\":"
            + " \"08-01\", \"perDay\": 1}], \"plans\": | $.immigration: stands beside surroundings",
        "\"plans\": | \"immigration\": [{\"from\": \"07-32\", \"to\": \"08-01\", \"perDay\": 1}],"
            + " \"plans\": | $.immigration[0].from: \"07-32\" is not valid; expected a day of",
        "\"plans\": | \"overrides\": {\"mites\": {\"clumpin\": 3}}, \"plans\": |"
            + " $.overrides.mites.clumpin: there is no such field",
        "\"plans\": | \"overrides\": {\"bees\": {\"mitesOnSummerBees\": 3}}, \"plans\": |"
            + " $.overrides.bees.mitesOnSummerBees: there is no such field any more: mites no"
            + " longer shorten the life of the bees that carry them",
        "\"plans\": | \"overrides\": {\"bees\": {\"mitesOnWinterBees\": 3}}, \"plans\": | set"
            + " \"adultInfections\" of \"bees\" instead",
        "\"plans\": | \"overrides\": {\"bees\": {\"harm\": 2}}, \"plans\": |"
            + " $.overrides.bees.harm: there is no such field any more: the factor on the deaths of"
            + " bees that emerge overtly infected is now called \"overtDeath\"",
        "\"plans\": | \"overrides\": {\"bees\": {\"winterDeath\": 0.004}}, \"plans\": | is now a"
            + " field of the climate",
        "\"plans\": | \"overrides\": {\"mites\": {\"deathWithBrood\": 0.01}}, \"plans\": |"
            + " $.overrides.mites.deathWithBrood: there is no such field any more: mites on bees"
            + " now die with their bees",
        "\"plans\": | \"overrides\": {\"mites\": {\"deathBroodless\": 0.01}}, \"plans\": |"
            + " \"deathLink\" of \"mites\"",
        "\"plans\": | \"overrides\": {\"mites\": {\"broodForSummerDeath\": 9}}, \"plans\": |"
            + " \"deathLink\" of \"mites\"",
        "\"plans\": | \"overrides\": {\"mites\": {\"clumping\": 0}}, \"plans\": |"
            + " $.overrides.mites.clumping: \"0\" is not valid; expected a number, 0.2 to 1000",
        "\"plans\": | \"overrides\": {\"bees\": {\"foragerDeath\": 0.6, \"hiveDeath\": 0.2,"
            + " \"halfLayingAdults\": 20000}}, \"plans\": | $: no colony lives through three years",
      })
  void faultNamesPlaceAndCure(String from, String to, String said) {
    assertThat(Texts.faults(Texts.study(from, to == null ? "" : to)))
        .singleElement()
        .asString()
        .startsWith("s.json, line ")
        .contains(said);
  }

  @Test
  void allFaultsComeAtOnceInTheOrderOfTheFile() {
    String text =
        Texts.STUDY
            .replace("\"t\"", "\"\"")
            .replace("temperate", "tropics")
            .replace("2027-03-01", "2027-02-29")
            .replace("\"infestation\": 1", "\"infestation\": 301, \"vigor\": 2")
            .replace("wait", "cage")
            .replace("2027-07-25", "soon");
    assertThat(Texts.faults(text))
        .hasSize(6)
        .satisfiesExactly(
            f -> assertThat(f).contains("line 2", "$.title"),
            f -> assertThat(f).contains("line 3", "$.climate"),
            f -> assertThat(f).contains("line 4", "$.start"),
            f -> assertThat(f).contains("line 6", "$.colony.infestation"),
            f -> assertThat(f).contains("line 6", "$.colony.vigor", "did you mean \"vigour\"?"),
            f -> assertThat(f).contains("line 10", "$.plans[1].controls[0].to"));
  }

  @Test
  void soundStudyHasNoFault() {
    assertThat(Texts.faults(Texts.STUDY)).isEmpty();
  }

  @Test
  void faultsOfAFileReferredToAreTold(@TempDir Path dir) throws IOException {
    Path study = dir.resolve("s.json");
    Files.writeString(dir.resolve("mine.json"), "{\n\"name\": 4}");
    Files.writeString(study, Texts.study("\"temperate\"", "\"mine.json\""));
    assertThat(catchThrowable(() -> StudyFile.read(study)))
        .isInstanceOf(BadInput.class)
        .hasMessageContaining("$.climate: \"mine.json\" is not valid; mend that file first")
        .hasMessageContaining("mine.json, line 2, column 9, $.name: \"4\" is not valid");
  }
}
