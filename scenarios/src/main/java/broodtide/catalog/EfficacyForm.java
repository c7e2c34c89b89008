package broodtide.catalog;

import broodtide.catalog.ControlTemplate.Against;
import broodtide.catalog.ControlTemplate.Efficacy;
import broodtide.catalog.ControlTemplate.Setting;
import broodtide.forms.ChoiceForm;
import broodtide.forms.Field;
import broodtide.forms.ListForm;
import broodtide.forms.MonthDayForm;
import broodtide.forms.NumberForm;
import broodtide.forms.ObjectForm;
import broodtide.forms.TextForm;
import broodtide.forms.TruthForm;
import broodtide.forms.WholeForm;
import broodtide.measure.Tag;
import java.time.MonthDay;
import java.util.List;
import java.util.Locale;

/** What was seen of a control. */
final class EfficacyForm {
  private static final Field<String> CLIMATE =
      Field.required("climate", TextForm.LINE, "name of the climate nearest to the place");
  private static final Field<MonthDay> DATE =
      Field.required("date", MonthDayForm.DAY, "first day of the treatment");
  private static final Field<Boolean> BROODLESS =
      Field.required("broodless", new TruthForm(), "whether the colonies had no brood");
  private static final Field<Integer> AFTER =
      Field.required(
          "measuredAfter", new WholeForm(1, 400, "days"), "days from then to the measurement");
  private static final Field<Against> AGAINST =
      Field.required(
          "against",
          ChoiceForm.of(List.of(Against.values()), a -> a.name().toLowerCase(Locale.ROOT)),
          "what the remaining mites were compared with: untreated colonies on the same"
              + " day, or the same colony at the start. With followup it is all mites killed"
              + " by the treatment and by a follow-up");
  private static final ObjectForm<Setting> SETTING =
      new ObjectForm<>(
          "setting",
          "where and how an efficacy was measured",
          List.of(CLIMATE, DATE, BROODLESS, AFTER, AGAINST),
          in ->
              new Setting(
                  in.need(CLIMATE),
                  in.need(DATE),
                  in.need(BROODLESS),
                  in.need(AFTER),
                  in.need(AGAINST)),
          (s, out) -> {
            out.put(CLIMATE, s.climate());
            out.put(DATE, s.date());
            out.put(BROODLESS, s.broodless());
            out.put(AFTER, s.measuredAfter());
            out.put(AGAINST, s.against());
          });

  private static final Field<Double> SHARE =
      Field.required("share", NumberForm.share(1), "share of mites that it removed");
  private static final Field<Setting> WHERE =
      Field.required("setting", SETTING, "where and how that was measured");
  private static final Field<Tag> TAG =
      Field.required(
          "tag",
          ChoiceForm.of(List.of(Tag.values()), Enum::name),
          "how the figure is known: SEEN in the source, DATA from open data, DERIVED by"
              + " arithmetic, MEMORY not verified, CHOICE of this project");
  private static final Field<String> SOURCE =
      Field.required("source", TextForm.NOTE, "where the figure comes from");
  private static final Field<Double> TRIAL_SHARE =
      Field.required(
          "share",
          NumberForm.of(0.001, 0.9999, "1"),
          "share of the mites that fell under the treatment, as published");
  private static final Field<Double> UNTREATED =
      Field.optional(
          "untreated",
          NumberForm.share(1),
          "share of the mites that fell of themselves in untreated hives meanwhile");
  private static final Field<Integer> COLONIES =
      Field.optional(
          "colonies",
          new WholeForm(1, 100_000, "colonies"),
          "treated colonies; 8 are taken when left out");
  private static final Field<Double> HIGH =
      Field.optional(
          "high", NumberForm.of(-60, 60, "degrees Celsius"), "mean daily high over the treatment");
  private static final Field<Boolean> POOLED =
      Field.optional(
          "pooled",
          new TruthForm(),
          true,
          "whether it counts towards the efficacy; one that does not is a check beside it");
  private static final ObjectForm<EfficacyTrial> TRIAL =
      new ObjectForm<>(
          "trial",
          "one trial of a control",
          List.of(TRIAL_SHARE, UNTREATED, COLONIES, HIGH, POOLED, TAG, SOURCE),
          in ->
              new EfficacyTrial(
                  in.need(TRIAL_SHARE),
                  in.find(UNTREATED),
                  in.find(COLONIES),
                  in.find(HIGH),
                  in.need(POOLED),
                  in.need(TAG),
                  in.need(SOURCE)),
          (t, out) -> {
            out.put(TRIAL_SHARE, t.share());
            t.untreated().ifPresent(u -> out.put(UNTREATED, u));
            t.colonies().ifPresent(n -> out.put(COLONIES, n));
            t.high().ifPresent(h -> out.put(HIGH, h));
            if (!t.pooled()) {
              out.put(POOLED, false);
            }
            out.put(TAG, t.tag());
            out.put(SOURCE, t.source());
          });
  private static final Field<List<EfficacyTrial>> TRIALS =
      Field.optional(
          "trials",
          new ListForm<>(TRIAL, 0, 200),
          List.of(),
          "the trials behind it, each with its source");
  private static final Field<Double> FACTOR =
      Field.required(
          "factor", NumberForm.of(1e-6, 1, "1"), "factor on its hazards that shows this share");
  private static final Field<Double> LOG_SD =
      Field.required(
          "logSd",
          NumberForm.of(0, 5, "1"),
          "spread of that factor between such apiaries and their colonies");
  private static final Field<Resistance> RESISTANT =
      Field.optional(
          "resistant",
          new ObjectForm<>(
              "resistant",
              "what a miticide does where mites resist it",
              List.of(SHARE, FACTOR, LOG_SD, SOURCE),
              in ->
                  new Resistance(in.need(SHARE), in.need(FACTOR), in.need(LOG_SD), in.need(SOURCE)),
              (r, out) -> {
                out.put(SHARE, r.share());
                out.put(FACTOR, r.factor());
                out.put(LOG_SD, r.logSd());
                out.put(SOURCE, r.source());
              }),
          "what it does where mites resist it");
  static final ObjectForm<Efficacy> FORM =
      new ObjectForm<>(
          "efficacy",
          "what a trial or practice saw of a control",
          List.of(SHARE, WHERE, TAG, SOURCE, TRIALS, RESISTANT),
          in ->
              new Efficacy(
                  in.need(SHARE),
                  in.need(WHERE),
                  in.need(TAG),
                  in.need(SOURCE),
                  in.need(TRIALS),
                  in.find(RESISTANT)),
          (e, out) -> {
            out.put(SHARE, e.share());
            out.put(WHERE, e.setting());
            out.put(TAG, e.tag());
            out.put(SOURCE, e.source());
            if (!e.trials().isEmpty()) {
              out.put(TRIALS, e.trials());
            }
            e.resistant().ifPresent(r -> out.put(RESISTANT, r));
          });

  private EfficacyForm() {}
}
