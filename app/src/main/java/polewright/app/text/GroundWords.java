package polewright.app.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.axis.rig.HomePosition;
import polewright.axis.rig.MountKind;
import polewright.axis.rig.Orientation;
import polewright.night.GroundPlan;
import polewright.sky.magnetic.CompassTrust;
import polewright.sky.place.Site;

/** What to set before dark, in words. */
public final class GroundWords {
    private GroundWords() {}

    public static List<String> of(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        Site site = plan.site();
        String pole = site.isNorthern() ? "north" : "south";
        lines.add("COMPASS " + AngleWords.bearing(plan.compassBearing()) + " is true " + pole + " (declination "
                + AngleWords.degrees(plan.declination().abs())
                + (plan.declination().radians() >= 0 ? " east" : " west") + ", give or take "
                + AngleWords.degrees(plan.declinationSigma()) + "; iron nearby can add more).");
        if (plan.compassTrust() == CompassTrust.NORMAL) {
            lines.add("        Read it a few steps from tripod, mount, car and phone.");
        }
        plan.magneticNotes().forEach(note -> lines.add("        " + note));
        lines.add("WEDGE   scale at " + AngleWords.degrees(site.poleAltitude()) + " (a scale that counts from the zenith: "
                + AngleWords.degrees(plan.scaleFromZenith()) + ").");
        lines.add("LEVEL   the base, with a bubble, in two directions. Half a degree will do: it costs no accuracy, only"
                + " screws that pull askew.");
        plan.shadow().ifPresentOrElse(
                shadow -> {
                    lines.add("SHADOW  of a plumb line points to " + AngleWords.bearing(shadow.azimuth()) + " true at "
                            + shadow.at() + "; the axis belongs " + AngleWords.degrees(shadow.axisClockwise().abs())
                            + (shadow.axisClockwise().radians() >= 0 ? " clockwise" : " counter-clockwise")
                            + " of it, seen from above.");
                    lines.add("        Do not look at the Sun; cap tube and finder by day.");
                },
                () -> lines.add("SHADOW  none: the Sun is down."));
        lines.add("        The Sun is on the meridian next at " + plan.nextSunTransit() + ".");
        lines.add("STAR    " + poleStar(plan));
        for (Orientation view : Orientation.values()) {
            lines.add("        " + viewWords(view) + AngleWords.clock(plan.poleStarClock(view)) + ".");
        }
        lines.add("");
        lines.add("HOME    " + kind.words() + ":");
        HomePosition.of(kind, site).lines().forEach(line -> lines.add("  " + line));
        return lines;
    }

    private static String poleStar(GroundPlan plan) {
        return plan.poleStarName() + String.format(
                Locale.ROOT, " stands %.1f′ from the true pole at %s. From the pole, toward:",
                plan.poleStarDistance().arcminutes(), plan.at());
    }

    private static String viewWords(Orientation view) {
        return switch (view) {
            case ERECT -> "by eye:                  ";
            case INVERTED -> "upside down (straight):  ";
            case MIRRORED -> "mirrored (diagonal):     ";
        };
    }
}
