package polewright.report.text;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.alignment.fix.AxisState;
import polewright.mount.AxisOffset;
import polewright.planning.seasons.AxisTrend;
import polewright.planning.seasons.NightGap;
import polewright.planning.seasons.PierMotion;
import polewright.sky.angle.Angle;

/** The movement of pier and wedge in words. */
final class MotionWords {
    private static final DateTimeFormatter DAY_AND_YEAR = DateTimeFormatter.ofPattern("d MMMM yyyy", Locale.ENGLISH);
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMMM", Locale.ENGLISH);
    private static final double WORTH_TELLING_SCATTER_ARCMIN = 0.1;
    private static final double FINEST_TURN = 1 / 16.0;
    private static final int DAYS_IN_YEAR = 365;

    private MotionWords() {}

    static List<String> of(PierMotion motion) {
        if (motion instanceof PierMotion.NotYet notYet) {
            return List.of("No trend yet. " + notYet.missing() + ".");
        }
        PierMotion.Fitted fitted = (PierMotion.Fitted) motion;
        List<String> lines = new ArrayList<>();
        lines.add("From " + day(fitted.from()) + " to " + day(fitted.to()) + ", by " + fitted.drifts()
                + " drifts, pier and wedge moved the axis " + rate(fitted.east(), "east", "west") + ", and "
                + rate(fitted.up(), "up", "down") + ".");
        fitted.east().swing().ifPresent(swing -> lines.add(swing(swing, "east and west", "farthest east")));
        fitted.up().swing().ifPresent(swing -> lines.add(swing(swing, "up and down", "highest")));
        double scatter = Math.max(fitted.east().scatterArcmin(), fitted.up().scatterArcmin());
        if (scatter >= WORTH_TELLING_SCATTER_ARCMIN) {
            lines.add("Scatter about that: about " + size(scatter) + " from night to night.");
        }
        if (fitted.east().isShown() || fitted.up().isShown()) {
            lines.add(undoing(fitted));
        }
        fitted.setAside().forEach(gap -> lines.add(setAside(gap)));
        return lines;
    }

    /** {@code 4′ east and 6′ up}. */
    static String way(AxisOffset drift) {
        return AngleWords.size(drift.east()) + (drift.east().radians() >= 0 ? " east" : " west") + " and "
                + AngleWords.size(drift.up()) + (drift.up().radians() >= 0 ? " up" : " down");
    }

    /** {@code 10 January 2026}, by UTC. */
    static String day(Instant at) {
        return DAY_AND_YEAR.format(at.atZone(ZoneOffset.UTC));
    }

    private static String rate(AxisTrend course, String more, String less) {
        if (!course.isShown()) {
            // Two sigma beyond the measured value: the true rate may be that large, and chance alone produces as much.
            double most = Math.abs(course.arcminPerMonth()) + 2 * course.sigmaPerMonth();
            return "neither " + more + " nor " + less + " measurably (under " + size(most) + " a month)";
        }
        return size(course.arcminPerMonth()) + " " + (course.arcminPerMonth() > 0 ? more : less) + " a month ± "
                + sigma(course.sigmaPerMonth());
    }

    private static String swing(AxisTrend.Swing swing, String ways, String farthest) {
        if (swing.arcmin() < 2 * swing.sigmaArcmin()) {
            return "No yearly swing " + ways + " (under " + size(swing.arcmin() + 2 * swing.sigmaArcmin()) + ").";
        }
        return "Yearly swing " + size(swing.arcmin()) + " either way, " + ways + ", ± "
                + sigma(swing.sigmaArcmin()) + "; " + farthest + " about "
                + DAY.format(LocalDate.ofYearDay(2025, 1 + (int) (swing.greatestAt() * DAYS_IN_YEAR))) + ".";
    }

    private static String undoing(PierMotion.Fitted fitted) {
        AxisState.Turns turns = fitted.monthlyCorrection();
        List<String> screws = new ArrayList<>();
        if (fitted.east().isShown()) {
            screws.add(screw("azimuth", turns.azimuth()));
        }
        if (fitted.up().isShown()) {
            screws.add(screw("altitude", turns.altitude()));
        }
        return "To undo one month of that: " + String.join(", ", screws) + ".";
    }

    private static String screw(String name, double turns) {
        double rounded = Math.rint(turns / FINEST_TURN) * FINEST_TURN;
        return name + " screw "
                + (rounded == 0
                        ? "less than 1/16 turn"
                        : Fractions.turns(rounded) + (rounded > 0 ? " clockwise" : " counter-clockwise"));
    }

    private static String setAside(NightGap.Drifted gap) {
        return "NOTE  Not used: from night " + gap.from().id().number() + " to night "
                + gap.to().id().number() + " it moved " + way(gap.drift())
                + ", unlike the others. Bumped, leaned on, or a screw turned and not logged?";
    }

    private static String size(double arcmin) {
        return AngleWords.size(Angle.ofArcminutes(arcmin));
    }

    private static String sigma(double arcmin) {
        return arcmin < 0.05 ? "under 0.1′" : size(arcmin);
    }
}
