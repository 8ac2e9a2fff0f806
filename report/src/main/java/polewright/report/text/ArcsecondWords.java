package polewright.report.text;

import java.util.Locale;
import polewright.sky.angle.Angle;

/** Small angles, to three figures: {@code 0.52″}, {@code 7.4″}, {@code 41″}. */
final class ArcsecondWords {
    private ArcsecondWords() {}

    static String of(Angle angle) {
        double arcsec = Math.abs(angle.arcseconds());
        return String.format(Locale.ROOT, arcsec < 0.995 ? "%.2f″" : arcsec < 9.95 ? "%.1f″" : "%.0f″", arcsec);
    }
}
