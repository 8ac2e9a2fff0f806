package polewright.app.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.axis.rig.HomePosition;
import polewright.axis.rig.MountKind;
import polewright.axis.rig.Orientation;
import polewright.night.GroundPlan;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.CompassTrust;
import polewright.sky.place.Site;

/** What to set before dark, in words. */
public final class GroundWords {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

    private GroundWords() {}

    /** North, level, wedge, shadow and pole star, then the home position. */
    public static List<String> of(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        lines.add("SITE    " + AngleWords.site(plan.site()) + ", for " + TIME.format(plan.at()) + ".");
        lines.addAll(bearings(plan, kind));
        lines.add("");
        lines.addAll(home(plan, kind));
        return lines;
    }

    /** Where north (or the axis) lies and how high the axis stands. */
    public static List<String> bearings(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        lines.addAll(compass(plan, kind));
        if (kind.hasPolarAxis()) {
            lines.add("WEDGE   scale at " + AngleWords.degrees(plan.site().poleAltitude())
                    + " (a scale that counts from the zenith: " + AngleWords.degrees(plan.scaleFromZenith()) + ").");
            lines.add("LEVEL   the base, with a bubble, in two directions. Half a degree will do: it costs no accuracy,"
                    + " only screws that pull askew.");
        } else {
            lines.add("LEVEL   the base, with a bubble, in two directions, as well as you can: no wedge makes up for"
                    + " it.");
        }
        lines.addAll(shadow(plan, kind));
        lines.addAll(poleStar(plan));
        return lines;
    }

    private static List<String> home(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        lines.add("HOME    " + kind.words() + ":");
        HomePosition.of(kind, plan.site()).lines().forEach(line -> lines.add("  " + line));
        return lines;
    }

    private static List<String> compass(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        Angle bearing = kind.hasPolarAxis() ? plan.compassBearing() : plan.compassNorth();
        if (plan.compassTrust() == CompassTrust.USELESS) {
            lines.add("COMPASS of no use here: take north from the Sun or a star.");
        } else {
            lines.add("COMPASS " + AngleWords.bearing(bearing) + " is true " + ahead(plan.site(), kind)
                    + " (declination " + declination(plan.declination()) + ", give or take "
                    + AngleWords.degrees(plan.declinationSigma()) + "; iron nearby can add more).");
        }
        if (plan.compassTrust() == CompassTrust.NORMAL) {
            lines.add("        Read it a few steps from tripod, mount, car and phone.");
        }
        plan.magneticNotes().forEach(note -> lines.add("NOTE    " + note));
        return lines;
    }

    private static List<String> shadow(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        if (plan.shadow().isPresent()) {
            GroundPlan.Shadow shadow = plan.shadow().get();
            Angle clockwise = kind.hasPolarAxis() ? shadow.axisClockwise() : shadow.northClockwise();
            lines.add("SHADOW  of a plumb line points to " + AngleWords.bearing(shadow.azimuth()) + " true at "
                    + TIME.format(shadow.at()) + "; " + (kind.hasPolarAxis() ? "the axis belongs " : "north is ")
                    + AngleWords.degrees(clockwise.abs())
                    + (clockwise.radians() >= 0 ? " clockwise" : " counter-clockwise") + " of it, seen from above.");
            lines.add("CARE    Do not look at the Sun; cap tube and finder by day.");
        } else {
            lines.add("SHADOW  none: the Sun is down.");
        }
        lines.add("        The Sun is on the meridian next at " + TIME.format(plan.nextSunTransit()) + ".");
        return lines;
    }

    private static List<String> poleStar(GroundPlan plan) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "STAR    %s stands %.1f′ from the true pole at %s. From the pole, toward:",
                plan.poleStarName(),
                plan.poleStarDistance().arcminutes(),
                TIME.format(plan.at())));
        for (Orientation view : Orientation.values()) {
            lines.add("        " + viewWords(view) + AngleWords.clock(plan.poleStarClock(view)) + ".");
        }
        return lines;
    }

    /** Which way the mount faces: along its axis, or north for one that has none. */
    private static String ahead(Site site, MountKind kind) {
        return site.isNorthern() || !kind.hasPolarAxis() ? "north" : "south";
    }

    private static String declination(Angle declination) {
        String size = AngleWords.degrees(declination.abs());
        if (size.equals(AngleWords.degrees(Angle.ZERO))) {
            return size;
        }
        return size + (declination.radians() > 0 ? " east" : " west");
    }

    private static String viewWords(Orientation view) {
        return switch (view) {
            case ERECT -> "by eye:                  ";
            case INVERTED -> "upside down (straight):  ";
            case MIRRORED -> "mirrored (diagonal):     ";
        };
    }
}
