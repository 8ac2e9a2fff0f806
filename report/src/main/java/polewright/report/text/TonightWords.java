package polewright.report.text;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import polewright.alignment.allowance.ExposureLimits;
import polewright.alignment.work.WorkPreset;
import polewright.planning.tonight.NightPlan;
import polewright.planning.tonight.Observability;
import polewright.planning.tonight.Purpose;
import polewright.planning.tonight.Target;
import polewright.planning.tonight.TargetOutcome;
import polewright.planning.tonight.TonightsExposure;
import polewright.planning.tonight.TonightsPlan;
import polewright.planning.tonight.TwilightCaution;
import polewright.sky.almanac.Darkness;
import polewright.sky.almanac.SunDepth;
import polewright.sky.angle.Angle;
import polewright.sky.place.HourAnglePlace;
import polewright.sky.time.Interval;

/** The plan of a night: whether it is worthwhile, when it is dark, what to observe in which order. */
public final class TonightWords {
    /** Heading of {@link #others}. */
    public static final String OTHERS = "Also good tonight";

    private static final Duration TO_SET_UP = Duration.ofMinutes(45);

    private static final String CARE = "CARE  ";
    private static final double BRIGHT_MOON = 0.5;
    // Axis ratio from which an object looks long rather than round.
    private static final double ELONGATED = 1.5;

    private final TonightsPlan tonight;
    private final NightClock clock;
    private final ZoneId zone;

    public TonightWords(TonightsPlan tonight, ZoneId zone) {
        this.tonight = tonight;
        this.zone = zone;
        this.clock = new NightClock(zone, tonight.evening().darkness().noonToNoon());
    }

    /** All of it, for a screen. */
    public List<String> all() {
        List<String> lines = new ArrayList<>();
        lines.add(worth());
        lines.addAll(darkness());
        lines.addAll(preparations());
        cautions().forEach(caution -> lines.add(CARE + caution));
        lines.add("");
        lines.addAll(plan());
        if (!tonight.others().isEmpty()) {
            lines.add("");
            lines.add(OTHERS + ":");
            others().forEach(line -> lines.add("  " + line));
        }
        lines.addAll(missed());
        return lines;
    }

    /** {@code Worthwhile: 10 h 50 min of astronomical darkness, 6 h 20 min of it moonless.} */
    public String worth() {
        Darkness darkness = tonight.evening().darkness();
        if (darkness.isPolarDay()) {
            return "Not tonight: the Sun does not set.";
        }
        Optional<Interval> night = darkness.below(SunDepth.ASTRONOMICAL);
        if (night.isEmpty()) {
            return "Bright objects only: the sky does not get fully dark tonight.";
        }
        Duration moonless =
                tonight.moon().moonless().stream().map(Interval::length).reduce(Duration.ZERO, Duration::plus);
        String dark = length(night.get().length()) + " of astronomical darkness, ";
        if (moonless.toMinutes() < 30) {
            return tonight.moon().phase().litShare() < 0.3
                    ? "Worthwhile: " + dark + "with a thin Moon."
                    : "For planets, clusters and double stars: " + dark + "with the Moon up throughout.";
        }
        boolean isMostlyMoonless =
                moonless.multipliedBy(2).compareTo(night.get().length()) >= 0;
        return (isMostlyMoonless ? "Worthwhile: " : "Partly worthwhile: ")
                + dark
                + (moonless.compareTo(night.get().length().minusMinutes(1)) >= 0
                        ? "all of it moonless."
                        : length(moonless) + " of it moonless.");
    }

    public List<String> darkness() {
        return DarknessWords.of(
                tonight.evening().site(),
                tonight.evening().weather(),
                tonight.evening().darkness(),
                tonight.moon(),
                zone);
    }

    /** Times of twilight and darkness, day by day. */
    public List<DarknessWords.Day> days() {
        return DarknessWords.days(tonight.evening().darkness(), zone);
    }

    /** Darkness and the Moon. */
    public List<String> sky() {
        return DarknessWords.sentences(
                tonight.evening().site(),
                tonight.evening().weather(),
                tonight.evening().darkness(),
                tonight.moon(),
                zone);
    }

    /** What to do before it is dark, as far as it is still ahead. */
    public List<String> preparations() {
        List<String> lines = new ArrayList<>();
        Darkness darkness = tonight.evening().darkness();
        Instant now = tonight.evening().now();
        darkness.below(SunDepth.SUNSET).map(Interval::from).ifPresent(sunset -> {
            Instant begin = sunset.minus(TO_SET_UP);
            if (now.isBefore(sunset) && sunset.isAfter(darkness.noonToNoon().from())) {
                lines.add("By " + clock.inSentence(begin)
                        + ": set up tripod and wedge, level (polewright ground). Keep the tube capped while"
                        + " the Sun is up.");
            }
        });
        darkness.below(SunDepth.NAUTICAL)
                .map(Interval::from)
                .filter(now::isBefore)
                .ifPresent(dusk -> lines.add("From " + clock.inSentence(dusk)
                        + ": polar axis (polewright next), then alignment stars (polewright stars)."));
        return lines;
    }

    /** The order, two lines per target. */
    public List<String> plan() {
        List<String> lines = new ArrayList<>();
        lines.add(planned());
        int number = 1;
        for (Slot slot : slots()) {
            if (slot.lines().isEmpty()) {
                lines.add("   " + slot.heading());
            } else {
                lines.add(String.format(Locale.ROOT, "%2d %s", number++, slot.heading()));
                slot.lines().forEach(line -> lines.add("     " + line));
            }
        }
        exposuresToCome().ifPresent(lines::add);
        return lines;
    }

    /** What the plan is for; or that there is none. */
    public String planned() {
        if (tonight.plan().slots().isEmpty()) {
            return tonight.others().isEmpty()
                    ? "Nothing to plan: no listed object is in reach while it is dark enough."
                    : "Nothing to plan: no listed object is in reach long enough while it is dark.";
        }
        return "The plan for " + work() + ", by altitude, moonlight, brightness and field of view. Weather is not"
                + " considered.";
    }

    /** {@code a casual look}, {@code short subs and long guided subs}. */
    private String work() {
        return tonight.observing().kinds().stream()
                .sorted()
                .map(WorkPreset::words)
                .collect(Collectors.joining(" and "));
    }

    /** Cautions about the Sun: at most one sentence for sunset and one for sunrise. */
    public List<String> cautions() {
        return tonight.sunCautions().stream().map(this::care).toList();
    }

    /**
     * A part of the night.
     *
     * @param heading the time, and the target
     * @param lines its position and the longest exposures; none for a gap
     */
    public record Slot(String heading, List<String> lines) {
        public Slot {
            lines = List.copyOf(lines);
        }
    }

    /** The targets in order, with the gaps. */
    public List<Slot> slots() {
        List<Slot> slots = new ArrayList<>();
        Optional<Instant> ended = Optional.empty();
        for (NightPlan.Slot slot : tonight.plan().slots()) {
            Instant from = slot.when().from();
            ended.filter(end -> Duration.between(end, from).toMinutes() >= 10)
                    .ifPresent(end ->
                            slots.add(new Slot(clock.span(new Interval(end, from)) + ": nothing planned.", List.of())));
            List<String> lines = new ArrayList<>();
            lines.add(detail(slot));
            exposure(slot.showing()).ifPresent(lines::add);
            slots.add(new Slot(
                    clock.span(slot.when()) + ": " + title(slot.showing().target()), lines));
            ended = Optional.of(slot.when().to());
        }
        return slots;
    }

    /** Why exposures are not given yet; empty if they are, or there are none. */
    public Optional<String> exposuresToCome() {
        boolean isToCome = !tonight.plan().slots().isEmpty()
                && tonight.observing().purpose() == Purpose.CAMERA
                && tonight.evening().axis().isEmpty();
        return isToCome
                ? Optional.of("Exposure limits follow once the axis is known (polewright next).")
                : Optional.empty();
    }

    private static String title(Target target) {
        return target.label()
                + (target.kind().equals("the Moon") || target.kind().equals("star or place")
                        ? ""
                        : ", " + target.kind());
    }

    private String detail(NightPlan.Slot slot) {
        Observability showing = slot.showing();
        HourAnglePlace place = showing.path().at(slot.when().from());
        var direction = tonight.evening().moment(slot.when().from()).airless(place);
        return AngleWords.compassPoint(direction.azimuth()) + ", "
                + degrees(tonight.evening().reach().altitudeSeen(place)) + " up; "
                + figures(slot) + "in reach " + windows(showing)
                + "; best " + clock.inSentence(showing.best()) + "; transits " + transit(showing) + ".";
    }

    /** {@code 04:10 next day}; by day it says so. */
    private String transit(Observability showing) {
        boolean isByDay = !tonight.evening().darkness().sunsetToSunrise().contains(showing.transit());
        return clock.inSentence(showing.transit()) + (isByDay ? " (by day)" : "");
    }

    private String figures(NightPlan.Slot slot) {
        Target target = slot.showing().target();
        StringBuilder words = new StringBuilder();
        target.magnitude().ifPresent(m -> words.append(String.format(Locale.ROOT, "magnitude %.1f, ", m)));
        if (target.kind().equals("planet") && target.major().radians() > 0) {
            words.append(Math.round(target.major().arcseconds())).append("″ across, ");
        } else if (target.major().radians() > 0) {
            words.append(AngleWords.size(target.major())).append(isElongated(target) ? " long, " : " across, ");
        }
        moon(slot.showing(), slot.when()).ifPresent(moon -> words.append(moon).append(", "));
        if (words.length() > 0) {
            words.setLength(words.length() - 2);
            words.append("; ");
        }
        return words.toString();
    }

    private static boolean isElongated(Target target) {
        return target.minor().radians() > 0
                && target.major().radians() > ELONGATED * target.minor().radians();
    }

    /** {@code Moon 40° away}; for targets lost in its light, that it is bright. */
    private Optional<String> moon(Observability showing, Interval when) {
        return tonight.moonDistance(showing, when)
                .filter(distance -> !showing.target().kind().equals("the Moon"))
                .map(distance -> (isDrowned(showing) ? "bright Moon " : "Moon ") + degrees(distance) + " away");
    }

    /** A half Moon hides anything fainter than the planets (common practice). */
    private boolean isDrowned(Observability showing) {
        return !showing.target().isBrightBody() && tonight.moon().phase().litShare() >= BRIGHT_MOON;
    }

    private String windows(Observability showing) {
        return String.join(" and ", showing.windows().stream().map(clock::span).toList());
    }

    private Optional<String> exposure(Observability showing) {
        if (tonight.observing().purpose() == Purpose.EYES) {
            return Optional.empty();
        }
        return TonightsExposure.of(tonight.evening(), showing).map(TonightWords::exposure);
    }

    private static String exposure(ExposureLimits.Limit limit) {
        return "Exposures up to " + TimeSpans.atMost(limit.unguided()) + " unguided, "
                + TimeSpans.atMost(limit.guided()) + " guided.";
    }

    /** Other good targets, one line each. */
    public List<String> others() {
        return tonight.others().stream().map(this::other).toList();
    }

    private String other(Observability showing) {
        String moon = moon(showing, new Interval(showing.best(), showing.best()))
                .filter(words -> isDrowned(showing))
                .map(words -> "; " + words)
                .orElse("");
        return title(showing.target()) + ": best " + clock.inSentence(showing.best()) + ", "
                + degrees(showing.bestAltitude()) + " up" + moon + ".";
    }

    private String care(TwilightCaution caution) {
        String at = clock.inSentence(caution.at());
        String near = near(caution);
        return switch (caution.crossing()) {
            case RISES -> "The Sun rises at " + at + ": move away and cap tube and finder before then." + near;
            case SETS -> "The Sun sets at " + at + ": keep tube and finder capped until then." + near;
        };
    }

    /** {@code  Near the Sun: Venus 24°, Mercury 18°.} */
    private static String near(TwilightCaution caution) {
        return caution.near().isEmpty()
                ? ""
                : caution.near().stream()
                        .map(near -> near.target().label() + " " + degrees(near.distance()))
                        .collect(Collectors.joining(", ", " Near the Sun: ", "."));
    }

    /** Requested targets that cannot be observed, with the reason. */
    public List<String> missed() {
        List<String> lines = new ArrayList<>();
        for (TargetOutcome outcome : tonight.missed()) {
            lines.add("Not tonight: " + outcome.target().label() + ": " + why(outcome) + ".");
        }
        return lines;
    }

    /** Why something cannot be observed tonight. */
    private static String why(TargetOutcome outcome) {
        return outcome instanceof TargetOutcome.OutOfReach out
                ? "even at its highest, " + ReachWords.of(out.barrier())
                : "the night is not dark enough for it";
    }

    private static String degrees(Angle angle) {
        return Math.round(angle.degrees()) + "°";
    }

    private static String length(Duration length) {
        long minutes = Math.round(length.toSeconds() / 60.0);
        return minutes < 60
                ? minutes + " min"
                : minutes / 60 + " h" + (minutes % 60 == 0 ? "" : " " + minutes % 60 + " min");
    }
}
