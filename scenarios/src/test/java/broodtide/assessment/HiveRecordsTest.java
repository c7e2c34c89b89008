package broodtide.assessment;

import static org.assertj.core.api.Assertions.assertThat;

import broodtide.control.Plan;
import broodtide.engine.Progress;
import broodtide.engine.Workers;
import broodtide.fit.SeasonPosterior;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A row that was put away is the same row, and counts of the apiary come out the same. */
class HiveRecordsTest {
  @Test
  void rowsAndCountsAreTheSameAfterwards() {
    List<HiveRow> kept = new ArrayList<>();
    List<HiveRow> read = new ArrayList<>();
    HiveRecords records = new HiveRecords();
    try (Workers workers = new Workers(2)) {
      for (String yard : List.of("Ridge", "Ridge", "Brook")) {
        ColonyCase c = Invented.colony().throughWinter().in(yard);
        List<Plan> plans = UsualPlans.of(c).subList(0, 3);
        SeasonPosterior posterior = Invented.posterior(c, 128, workers);
        Comparison comparison = Comparison.of(c, posterior, plans, workers, Progress.NONE);
        HiveRow row = HiveRow.of(comparison, comparison.decision());
        byte[] bytes = HiveRecords.bytes(row);
        kept.add(row);
        read.add(records.row(c, plans, () -> bytes));
      }
    }
    for (int i = 0; i < kept.size(); i++) {
      HiveRow a = kept.get(i);
      HiveRow b = read.get(i);
      assertThat(b.decision()).isEqualTo(a.decision());
      assertThat(b.infestation()).isEqualTo(a.infestation());
      assertThat(b.judged()).isEqualTo(a.judged());
      assertThat(b.judgedOn()).isEqualTo(a.judgedOn());
      assertThat(b.lastCount()).isEqualTo(a.lastCount());
      assertThat(b.nextCount()).isEqualTo(a.nextCount());
      assertThat(b.lost()).hasSize(3).containsOnlyKeys(a.lost().keySet());
    }
    ApiarySheet before = ApiarySheet.of(kept);
    ApiarySheet after = ApiarySheet.of(read);
    assertThat(after.over().orElseThrow().distribution())
        .containsExactly(before.over().orElseThrow().distribution());
    for (String plan : kept.get(0).lost().keySet()) {
      assertThat(lost(read, plan)).containsExactly(lost(kept, plan));
      for (int i = 0; i < kept.size(); i++) {
        assertThat(read.get(i).lost().get(plan).mites())
            .isEqualTo(kept.get(i).lost().get(plan).mites());
      }
    }
  }

  private static double[] lost(List<HiveRow> rows, String plan) {
    return ApiaryCount.of(rows.stream().map(row -> row.lost().get(plan).chance()).toList())
        .distribution();
  }
}
