package polewright.report.text;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.mount.rig.MountKind;
import polewright.planning.tonight.AlignmentOutcome;
import polewright.planning.tonight.AlignmentStar;
import polewright.planning.tonight.Evening;
import polewright.planning.tonight.ExclusionReason;
import polewright.planning.tonight.StarMove;
import polewright.planning.tonight.StarSurroundings;
import polewright.sky.PlainNumber;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.angle.Sexagesimal;
import polewright.sky.atlas.StarColour;

/** Which stars to align on and how to find each, for an observer who stands at the mount and looks up. */
public final class StarFindingWords {
    /** The assumed aperture if none is given, millimetres. */
    public static final double USUAL_APERTURE_MM = 200;

    private static final DateTimeFormatter CLOCK = DateTimeFormatter.ofPattern("HH:mm", Locale.ROOT);
    private static final DateTimeFormatter DATE = DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.ENGLISH);
    private static final String INDENT = "   ";
    private static final double FIST_DEG = 10;
    private static final double LEAST_MOVE_DEG = 0.5;
    private static final String SUN_IS_UP =
            "The Sun is up. Cap the finder. Keep the tube capped while it moves. Never sweep for a star.";

    private final Evening evening;
    private final ZoneId zone;
    private final double apertureMm;
    private final boolean isFromHome;

    /**
     * For one moment.
     *
     * @param zone of the times shown
     * @param apertureMm assumed aperture of the telescope
     * @param isFromHome whether the tube starts from its home position
     */
    public StarFindingWords(Evening evening, ZoneId zone, double apertureMm, boolean isFromHome) {
        this.evening = evening;
        this.zone = zone;
        this.apertureMm = apertureMm;
        this.isFromHome = isFromHome;
    }

    /** The complete text. */
    public List<String> of(AlignmentOutcome outcome, int asked) {
        return outcome instanceof AlignmentOutcome.Chosen chosen
                ? chosen(chosen, asked)
                : nothing((AlignmentOutcome.Nothing) outcome);
    }

    private List<String> chosen(AlignmentOutcome.Chosen chosen, int asked) {
        List<String> lines = new ArrayList<>();
        lines.add(heading());
        cautions(chosen).forEach(caution -> lines.add("CARE  " + caution));
        for (Found star : found(chosen)) {
            lines.add("");
            lines.add(star.heading());
            star.lines()
                    .forEach(
                            line -> lines.add(String.format(Locale.ROOT, "%s%-6s%s", INDENT, line.tag(), line.text())));
        }
        lines.add("");
        lines.addAll(expected(chosen, asked));
        return lines;
    }

    /** {@code Centre these, in this order, at 20:00 UTC, 25 November 2026:}. */
    public String heading() {
        return "Centre these, in this order, at " + time(evening.now()) + ", "
                + DATE.format(evening.now().atZone(zone)) + ":";
    }

    /** What was left out because it is too faint, and the expected go-to accuracy. */
    public List<String> expected(AlignmentOutcome.Chosen chosen, int asked) {
        List<String> lines = new ArrayList<>(shortfall(chosen, asked));
        chosen.expectedError()
                .ifPresent(error -> lines.add("With " + centred(chosen.stars().size())
                        + " centred to 1′, 95 % of go-tos should land within " + AngleWords.size(error)
                        + " of the centre."));
        return lines;
    }

    private static String centred(int stars) {
        return switch (stars) {
            case 1 -> "this star";
            case 2 -> "both stars";
            default -> "all " + stars + " stars";
        };
    }

    /** A star, and how to find it. */
    public record Found(String heading, List<Line> lines) {
        public Found {
            lines = List.copyOf(lines);
        }
    }

    /**
     * A sentence.
     *
     * @param tag its subject, in capitals
     */
    public record Line(String tag, String text) {}

    /** The stars in order. */
    public List<Found> found(AlignmentOutcome.Chosen chosen) {
        List<Found> found = new ArrayList<>();
        for (AlignmentStar star : chosen.stars()) {
            found.add(star(star, found.size() + 1));
        }
        return found;
    }

    private Found star(AlignmentStar star, int number) {
        List<Line> lines = new ArrayList<>();
        Angle azimuth = star.seen().direction().azimuth();
        Angle altitude = star.seen().altitude();
        if (star.isSeenByEye()) {
            lines.add(new Line("KNOW", look(star) + " " + pattern(star.around())));
            confusions(star.around()).forEach(line -> lines.add(new Line("NOT", line)));
        } else {
            lines.add(new Line(
                    "FIND",
                    "The sky is too bright to see it by eye. Set the circles to hour angle "
                            + AngleWords.hourAngle(star.seen().place().hourAngle()) + ", declination "
                            + Sexagesimal.degrees(star.seen().place().declination(), 0)
                            + ", and look through the telescope, focused on infinity."));
        }
        lines.add(new Line("MOVE", move(star.move())));
        lines.add(new Line("WHY", why(star)));
        return new Found(
                number + ". " + star.seen().name() + ": " + AngleWords.compassPoint(azimuth)
                        + String.format(Locale.ROOT, " (%.0f°), ", Math.rint(azimuth.degrees()) % 360)
                        + fists(altitude) + " up" + String.format(Locale.ROOT, " (%.0f°).", altitude.degrees()),
                lines);
    }

    private static String look(AlignmentStar star) {
        String colour =
                star.around().colour().map(StarColour::words).map(c -> ", " + c).orElse("");
        return brightness(star.seen().magnitude()) + colour + ".";
    }

    private static String brightness(double magnitude) {
        if (magnitude < -1) {
            return "The brightest star in the sky";
        }
        if (magnitude < 0.5) {
            return "Very bright";
        }
        if (magnitude < 1.5) {
            return "Bright";
        }
        return magnitude < 2.5 ? "Fairly bright" : "Easily visible, not bright";
    }

    /** {@code The brightest of Lyra. Deneb is 2½ fists (24°) to its left, fainter.} */
    private static String pattern(StarSurroundings around) {
        String guides = around.guides().stream()
                .map(guide -> " " + guide.name() + " is " + neighbour(guide) + ".")
                .collect(Collectors.joining());
        return (around.isItsBrightest() ? "The brightest of " : "In ")
                + around.constellation().name() + "." + guides;
    }

    private static List<String> confusions(StarSurroundings around) {
        List<String> lines = new ArrayList<>();
        around.lookalikes().forEach(other -> lines.add(other.name() + ", " + neighbour(other) + "."));
        around.planets()
                .forEach(planet -> lines.add(planet.name() + ", " + neighbour(planet)
                        + ": a planet. It shines steadily; the star twinkles."));
        return lines;
    }

    private static String neighbour(StarSurroundings.Neighbour other) {
        return fists(other.distance())
                + String.format(Locale.ROOT, " (%.0f°) ", other.distance().degrees())
                + other.side().words()
                + other.isBrighter()
                        .map(isBrighter -> isBrighter ? ", brighter" : ", fainter")
                        .orElse("");
    }

    /** A fist at arm's length is 10° wide (common practice); to the nearest half. */
    static String fists(Angle angle) {
        long halves = Math.round(angle.degrees() / FIST_DEG * 2);
        if (halves <= 1) {
            return halves == 0 ? "a finger or two" : "half a fist";
        }
        String number = halves / 2 + (halves % 2 == 0 ? "" : "½");
        return number + (halves == 2 ? " fist" : " fists");
    }

    private String move(StarMove move) {
        if (move.slower().degrees() < LEAST_MOVE_DEG) {
            return "None: already there.";
        }
        boolean hasPolarAxis = evening.rig().kind() != MountKind.FORK_UPRIGHT;
        String lower = turn(move.longitude(), hasPolarAxis ? "west" : "right", hasPolarAxis ? "east" : "left")
                + (hasPolarAxis ? " in hour angle" : " in azimuth");
        String upper = turn(move.latitude(), hasPolarAxis ? "north" : "up", hasPolarAxis ? "south" : "down")
                + (hasPolarAxis ? " in declination" : " in altitude");
        return switch (move.order()) {
            case BOTH_TOGETHER -> lower + ", " + upper + ".";
            case LOWER_AXIS_FIRST -> "First " + lower + "; only then " + upper + ", to keep away from the Sun.";
            case UPPER_AXIS_FIRST -> "First " + upper + "; only then " + lower + ", to keep away from the Sun.";
        };
    }

    private static String turn(Angle angle, String positive, String negative) {
        return String.format(
                Locale.ROOT, "%.0f° %s", angle.abs().degrees(), angle.radians() >= 0 ? positive : negative);
    }

    private static String why(AlignmentStar star) {
        String side = star.seen().place().hourAngle().radians() > 0 ? "west" : "east";
        return (star.isBrightestAround() ? "Brightest star within 20° (two fists)" : "Well spread from the others")
                + ", " + side + " of the meridian.";
    }

    /** Safety cautions; by night usually none. */
    public List<String> cautions(AlignmentOutcome.Chosen chosen) {
        if (chosen.isSunUp()) {
            return List.of(
                    SUN_IS_UP,
                    "These stars and the moves between them stay at least 30° from the Sun. Do not move the"
                            + " telescope any other way. Follow local rules for daytime viewing.");
        }
        return evening.darkness()
                .below(SunDepth.SUNSET)
                .map(night -> night.to())
                .filter(rise -> rise.isAfter(evening.now())
                        && rise.isBefore(evening.now().plusSeconds(3600)))
                .map(rise -> List.of("The Sun rises at " + time(rise) + ": cap tube and finder before then."))
                .orElse(List.of());
    }

    private List<String> shortfall(AlignmentOutcome.Chosen chosen, int asked) {
        List<String> lines = new ArrayList<>();
        boolean isTelescopeNeeded = chosen.stars().stream().anyMatch(star -> !star.isSeenByEye());
        if (chosen.stars().size() < asked) {
            lines.add("Only " + chosen.stars().size() + " of the " + asked + " requested can be used now.");
        }
        if (isTelescopeNeeded) {
            lines.add("For a clear sky and " + PlainNumber.of(apertureMm)
                    + " mm of aperture with a low-power eyepiece (--aperture sets yours).");
        }
        if (isTelescopeNeeded || chosen.stars().size() < asked) {
            lines.add(whenOut(chosen.visibleByEyeFrom()));
        }
        return lines;
    }

    /** Why no star can be used, and when some can. */
    public List<String> nothing(AlignmentOutcome.Nothing nothing) {
        List<String> lines = new ArrayList<>();
        if (nothing.isSunUp()) {
            lines.add("CARE  " + SUN_IS_UP);
        }
        lines.add("No star can be used at " + time(evening.now()) + ": " + reason(nothing));
        lines.add(whenOut(nothing.visibleByEyeFrom()));
        return lines;
    }

    private String reason(AlignmentOutcome.Nothing nothing) {
        if (nothing.isBlockedBySun()) {
            return isFromHome
                    ? "from the home position, every simple move to a star that is bright enough passes near the Sun."
                    : "every simple move there passes near the Sun. Cap the tube, move it home by the way that leads"
                            + " away"
                            + " from the Sun, and ask again without --from.";
        }
        Optional<ExclusionReason> main = nothing.exclusions().entrySet().stream()
                .filter(entry -> entry.getKey() != ExclusionReason.AWKWARD)
                .max(Map.Entry.<ExclusionReason, Integer>comparingByValue()
                        .thenComparing(Map.Entry.comparingByKey(Comparator.reverseOrder())))
                .map(Map.Entry::getKey);
        return switch (main.orElse(ExclusionReason.AWKWARD)) {
            case SKY_TOO_BRIGHT ->
                "the sky is too bright, even through " + PlainNumber.of(apertureMm)
                        + " mm of aperture (--aperture sets yours).";
            case OUT_OF_REACH ->
                "all stars that are bright enough are behind the skyline or beyond the mount's limits.";
            case AWKWARD -> "all stars that are bright enough are too low, overhead or close to the pole.";
            case NEAR_SUN -> "all stars that are bright enough are near the Sun.";
            case NEAR_MOON -> "those within reach are lost in moonlight.";
        };
    }

    private String whenOut(Optional<Instant> out) {
        return out.map(at -> "Enough stars are visible to the naked eye from " + time(at) + " on.")
                .orElse("Not enough stars become visible to the naked eye within a day.");
    }

    private String time(Instant at) {
        return CLOCK.format(at.atZone(zone)) + " " + zoneName(at);
    }

    private String zoneName(Instant at) {
        String name = DateTimeFormatter.ofPattern("zzz", Locale.ENGLISH).format(at.atZone(zone));
        return name.equals("Z") ? "UTC" : name;
    }
}
