package polewright.report.text;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.alignment.allowance.ExposureLimits;
import polewright.mount.rig.Camera;
import polewright.planning.tonight.UprightExposures;

/** The exposures that a fork in altazimuth set-up allows. */
public final class UprightWords {
    private static final int[] ALTITUDES = {30, 45, 60, 75, 85};
    private static final int[] DIAGONALS = {45, 135, 225, 315};
    // Exactly east or west there is no field rotation, but no target stays there.
    private static final int[] NEAR_EAST_AND_WEST = {80, 100, 260, 280};
    private static final double NEARLY_ALL = 0.9;
    private static final double SOME = 0.25;

    private UprightWords() {}

    /**
     * Whether the wedge is worthwhile, then the table.
     *
     * @param isAxisKnown whether {@code onWedge} uses tonight's axis, not a typical one
     */
    public static List<String> of(
            UprightExposures upright,
            Camera camera,
            Duration wanted,
            ExposureLimits.Limit onWedge,
            boolean isAxisKnown) {
        List<String> lines = new ArrayList<>();
        double share = upright.shareOfSky(wanted);
        String exposure = TimeSpans.of(wanted);
        if (share < NEARLY_ALL && onWedge.guided().compareTo(wanted) < 0) {
            lines.add("For exposures of " + exposure
                    + " the wedge alone is not enough, see below. Without it they are possible on " + percent(share)
                    + " of the sky above 30°.");
        } else if (share >= NEARLY_ALL) {
            lines.add("For exposures of " + exposure + " the wedge gains little: without it they are possible on "
                    + percent(share) + " of the sky above 30°.");
        } else if (share >= SOME) {
            lines.add(
                    "For exposures of " + exposure + " the wedge is partly worthwhile: without it they are possible on "
                            + percent(share) + " of the sky above 30°, toward the east and west.");
        } else {
            lines.add("For exposures of " + exposure + " the wedge is worthwhile: without it they are possible on only "
                    + percent(share) + " of the sky above 30°.");
        }
        lines.add("On the wedge, " + (isAxisKnown ? "with the axis as fixed tonight" : "with the axis 5′ off")
                + ", field rotation allows " + TimeSpans.atMost(onWedge.guided()) + " guided and "
                + TimeSpans.atMost(onWedge.unguided()) + " unguided, anywhere above 30°.");
        lines.add("Visual observing needs no wedge.");
        lines.add("");
        lines.add("Upright: longest exposure with " + camera.name() + " before stars in the corners trail by "
                + String.format(Locale.ROOT, "%.1f″", upright.tolerance().arcseconds()) + ":");
        lines.add("  height   toward north   toward south   NE, SE, SW, NW   10° off E, W");
        for (int altitude : ALTITUDES) {
            lines.add(String.format(
                    Locale.ROOT,
                    "  %4d°  %13s  %13s  %16s  %13s",
                    altitude,
                    time(upright.longest(0, altitude)),
                    time(upright.longest(180, altitude)),
                    time(shortest(upright, altitude, DIAGONALS)),
                    time(shortest(upright, altitude, NEAR_EAST_AND_WEST))));
        }
        lines.add("Due east and west the field stops rotating for a moment. Exposures can be longer there, but only"
                + " while the target"
                + " passes.");
        return lines;
    }

    private static Duration shortest(UprightExposures upright, int altitude, int[] azimuths) {
        Duration shortest = UprightExposures.LONGEST;
        for (int azimuth : azimuths) {
            Duration there = upright.longest(azimuth, altitude);
            shortest = there.compareTo(shortest) < 0 ? there : shortest;
        }
        return shortest;
    }

    private static String time(Duration duration) {
        return duration.compareTo(UprightExposures.LONGEST) >= 0 ? "over an hour" : TimeSpans.atMost(duration);
    }

    private static String percent(double share) {
        return Math.round(share * 100) + " %";
    }
}
