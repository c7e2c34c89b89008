package broodtide.chart;

import broodtide.measure.RefusedException;
import org.jspecify.annotations.Nullable;

/** This machine has no fonts, so a bitmap cannot be drawn; SVG pictures still can. */
public final class FontsMissing extends RefusedException {
  private static final long serialVersionUID = 1L;

  FontsMissing(@Nullable Throwable cause) {
    super(
        "no fonts were found, so PNG pictures cannot be drawn. On Debian or Ubuntu run"
            + " 'apt-get install libfontconfig1 fonts-dejavu-core' (other systems: fontconfig"
            + " and any sans-serif font). SVG pictures need no fonts",
        cause);
  }
}
