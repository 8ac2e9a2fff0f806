package polewright.report.text;

import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.mount.rig.HomePosition;
import polewright.mount.rig.MountKind;
import polewright.mount.rig.Orientation;
import polewright.session.GroundPlan;
import polewright.sky.angle.Angle;
import polewright.sky.magnetic.CompassTrust;
import polewright.sky.place.Site;

/** The set-up before dark, in words. */
public final class GroundWords {
    private static final DateTimeFormatter TIME =
            DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

    private static final int TAG_WIDTH = 8;

    private GroundWords() {}

    /**
     * One thing to set or to know.
     *
     * @param tag its subject, one word in capitals; {@code CARE} is a safety caution
     * @param lines the first is the thing itself
     */
    public record Part(String tag, List<String> lines) {
        public Part {
            lines = List.copyOf(lines);
        }

        private List<String> printed() {
            List<String> printed = new ArrayList<>();
            String before = String.format(Locale.ROOT, "%-" + TAG_WIDTH + "s", tag);
            for (String line : lines) {
                printed.add(before + line);
                before = " ".repeat(TAG_WIDTH);
            }
            return printed;
        }
    }

    /** North, level, wedge, shadow and pole star, then the home position. */
    public static List<String> of(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        lines.add(place(plan));
        lines.addAll(bearings(plan, kind));
        lines.add("");
        lines.add("HOME    " + kind.words() + ":");
        HomePosition.of(kind, plan.site()).lines().forEach(line -> lines.add("  " + line));
        return lines;
    }

    /** Place and time. */
    private static String place(GroundPlan plan) {
        return "SITE    " + AngleWords.site(plan.site()) + ", for " + TIME.format(plan.at()) + ".";
    }

    /** The direction of north (or of the axis) and the altitude of the axis. */
    public static List<String> bearings(GroundPlan plan, MountKind kind) {
        return parts(plan, kind).stream()
                .flatMap(part -> part.printed().stream())
                .toList();
    }

    /** The same, part by part. */
    public static List<Part> parts(GroundPlan plan, MountKind kind) {
        List<Part> parts = new ArrayList<>(compass(plan, kind));
        if (kind.hasPolarAxis()) {
            parts.add(new Part(
                    "WEDGE",
                    List.of("scale at " + AngleWords.degrees(plan.site().poleAltitude())
                            + " (a scale that counts from the zenith: " + AngleWords.degrees(plan.scaleFromZenith())
                            + ").")));
            parts.add(new Part(
                    "LEVEL",
                    List.of("the base with a bubble, in two directions. Within half a degree is enough. A tilt"
                            + " does not spoil the alignment, but each screw then also moves the axis"
                            + " slightly in the other direction.")));
        } else {
            parts.add(new Part(
                    "LEVEL",
                    List.of("the base with a bubble, in two directions, as well as you can: there is no wedge to"
                            + " correct for"
                            + " it.")));
        }
        parts.addAll(shadow(plan, kind));
        parts.add(poleStar(plan));
        return parts;
    }

    private static List<Part> compass(GroundPlan plan, MountKind kind) {
        List<String> lines = new ArrayList<>();
        Angle bearing = kind.hasPolarAxis() ? plan.compassBearing() : plan.compassNorth();
        if (plan.compassTrust() == CompassTrust.USELESS) {
            lines.add("of no use here. Find north by the Sun or a star.");
        } else {
            lines.add(AngleWords.bearing(bearing) + " is true " + ahead(plan.site(), kind)
                    + " (declination " + declination(plan.declination()) + " ± "
                    + AngleWords.degrees(plan.declinationSigma()) + "; nearby iron can add more).");
        }
        if (plan.compassTrust() == CompassTrust.NORMAL) {
            lines.add("Read it a few steps from tripod, mount, car and phone.");
        }
        List<Part> parts = new ArrayList<>(List.of(new Part("COMPASS", lines)));
        plan.magneticNotes().forEach(note -> parts.add(new Part("NOTE", List.of(note))));
        return parts;
    }

    private static List<Part> shadow(GroundPlan plan, MountKind kind) {
        String transit = "Next solar transit: " + TIME.format(plan.nextSunTransit()) + ".";
        if (plan.shadow().isEmpty()) {
            return List.of(new Part("SHADOW", List.of("none: the Sun is down.", transit)));
        }
        GroundPlan.Shadow shadow = plan.shadow().get();
        Angle clockwise = kind.hasPolarAxis() ? shadow.axisClockwise() : shadow.northClockwise();
        return List.of(
                new Part("CARE", List.of("Do not look at the Sun; cap tube and finder by day.")),
                new Part(
                        "SHADOW",
                        List.of(
                                "a plumb line's shadow points to " + AngleWords.bearing(shadow.azimuth()) + " true at "
                                        + TIME.format(shadow.at()) + "; "
                                        + (kind.hasPolarAxis() ? "the axis must be " : "north is ")
                                        + AngleWords.degrees(clockwise.abs())
                                        + (clockwise.radians() >= 0 ? " clockwise" : " counter-clockwise")
                                        + " of it, seen from above.",
                                transit)));
    }

    private static Part poleStar(GroundPlan plan) {
        List<String> lines = new ArrayList<>();
        lines.add(String.format(
                Locale.ROOT,
                "%s is %.1f′ from the true pole at %s. Direction from the pole:",
                plan.poleStarName(),
                plan.poleStarDistance().arcminutes(),
                TIME.format(plan.at())));
        for (Orientation view : Orientation.values()) {
            lines.add(viewWords(view) + AngleWords.clock(plan.poleStarClock(view)) + ".");
        }
        return new Part("STAR", lines);
    }

    /** The direction the mount faces: along its axis, or north for one without an axis. */
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
