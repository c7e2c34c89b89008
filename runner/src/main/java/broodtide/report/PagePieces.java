package broodtide.report;

import broodtide.assessment.ApiaryPlan;
import broodtide.assessment.ApiarySheet;
import broodtide.assessment.Comparison;
import broodtide.assessment.PlanDay;
import broodtide.chart.Picture;
import broodtide.chart.Size;
import broodtide.wash.ThresholdSet;
import java.util.List;
import java.util.Map;

/** Pieces of the report as HTML, for a page that shows them one by one. */
public final class PagePieces {
  private static final Size UPRIGHT = new Size(Size.PHONE.width(), 660);

  private PagePieces() {}

  /**
   * {@return the sheet of an apiary with its picture}
   *
   * @param sheet the apiary
   * @param plans one plan for the whole apiary, see {@link ApiarySheet#together}
   * @param thresholds the set that its hives are held to
   * @param places identifiers of the sections of the hives, by name
   */
  public static String sheet(
      ApiarySheet sheet,
      List<ApiaryPlan> plans,
      ThresholdSet thresholds,
      Map<String, String> places) {
    HtmlWriter h = HtmlWriter.piece();
    new SheetSection(sheet, plans, thresholds, places).write(h);
    return h.finish();
  }

  /**
   * {@return the season of a colony under its plans, as a picture}
   *
   * @param comparison the plans that were played
   */
  public static String season(Comparison comparison) {
    return figure(PlanPictures.plans(comparison, PlanDay::all), UPRIGHT, "");
  }

  /**
   * {@return a picture as it suits a wide screen and a phone}
   *
   * @param picture the picture
   * @param phone its size on a phone
   * @param caption how to read it; empty for none
   */
  public static String figure(Picture picture, Size phone, String caption) {
    return HtmlWriter.piece().figure(picture, phone, caption).finish();
  }

  /**
   * {@return the plans of a colony in figures, winter loss and infested winter-bee brood first,
   * with what stands against each}
   *
   * @param comparison the plans
   */
  public static String plans(Comparison comparison) {
    HtmlWriter h = HtmlWriter.piece();
    ColonySection.lossFirst(h, comparison);
    return h.finish();
  }

  /** {@return how to read the picture of a season, and figures, in two sentences} */
  public static List<String> reading() {
    return List.of(ColonySection.CHART, ColonySection.FIGURES);
  }
}
