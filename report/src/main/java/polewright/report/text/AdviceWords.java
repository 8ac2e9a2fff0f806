package polewright.report.text;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.advice.Adviser;
import polewright.alignment.advice.SightingKind;
import polewright.session.DarknessWait;
import polewright.session.NightState;
import polewright.sky.angle.Angle;

/** The next thing to do, in words: the verb first, then the reason. */
public final class AdviceWords {
    // A smaller chance is no reason to turn a screw.
    private static final double NEARER_ONLY = 0.2;

    private static final DateTimeFormatter CLOCK =
            DateTimeFormatter.ofPattern("HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);

    private AdviceWords() {}

    /** Several lines. */
    public static List<Line> of(NightState night) {
        return night.advice().accept(new Lines(night));
    }

    /** The same while a camera watches the turns: nothing needs to be logged. */
    public static List<Line> whileFollowed(NightState night) {
        List<Line> lines = new ArrayList<>(of(night));
        if (night.advice() instanceof Advice.TurnScrews) {
            lines.removeIf(line -> line.tag().isForTyping());
            lines.add(Tag.THEN.line(
                    "take a frame. It shows what the turn did and what to turn next; no need to log it."));
        }
        return lines;
    }

    /** The advice in one line, for lists. */
    public static String line(NightState night) {
        Line first = of(night).get(0);
        return first.tag() + " " + first.text();
    }

    /** A probability in whole percent; the ends are shown as under 1 and over 99. */
    public static String percent(double probability) {
        if (probability > 0.99) {
            return Wrapping.unbroken("over 99 %");
        }
        if (probability < 0.01) {
            return Wrapping.unbroken("under 1 %");
        }
        return Wrapping.unbroken(String.format(Locale.ROOT, "%.0f %%", 100 * probability));
    }

    private static List<Line> turn(Advice.TurnScrews advice, NightState night) {
        List<Line> lines = new ArrayList<>();
        if (advice.loosenFirst()) {
            lines.add(Tag.LOOSEN.line("the clamps first."));
        }
        lines.addAll(TurnWords.of(advice, night.fix().rig()));
        ScrewWords.test(advice).ifPresent(note -> lines.add(Tag.NOTE.line(note)));
        ScrewWords.otherWay(night).forEach(note -> lines.add(Tag.NOTE.line(note)));
        lines.add(Tag.WHY.line(why(advice)));
        lines.addAll(TurnWords.command(advice));
        return lines;
    }

    private static String why(Advice.TurnScrews advice) {
        if (!advice.tests().isEmpty()) {
            return "Far enough to show which way the screw moves the axis, and easily turned back.";
        }
        return advice.probabilityAfter() < NEARER_ONLY
                ? "This brings the axis closer. The screws are not yet known well; the next sighting will show how"
                        + " close."
                : "Chance of being good enough: " + percent(advice.probabilityNow()) + " now, "
                        + percent(advice.probabilityAfter()) + " after this.";
    }

    private static List<Line> clamp(Advice.Clamp clamp) {
        boolean good = clamp.probabilityNow() >= Adviser.ENOUGH;
        return List.of(
                Tag.CLAMP.line("Tighten the clamps gently, a little on each in turn."),
                Tag.WHY.line(
                        (good
                                ? "Chance of being good enough: " + percent(clamp.probabilityNow())
                                        + ", including the shift expected from clamping."
                                : "Probably good enough (" + percent(clamp.probabilityNow())
                                        + "). Clamp, then check with one more sighting.")),
                Tag.THEN.line(Wrapping.unbroken("polewright clamp")));
    }

    private static List<Line> stop(Advice.Stop stop, NightState night) {
        boolean good = stop.probabilityNow() >= Adviser.ENOUGH;
        return List.of(
                good
                        ? Tag.STOP.line("Good enough. Leave the screws alone and enjoy the night.")
                        : Tag.STOP.line(
                                "Another turn would hardly improve it with these screws and clamps. Leave them alone."),
                Tag.WHY.line("Chance of being " + night.allowance().words() + ": " + percent(stop.probabilityNow())
                        + ". The axis is " + FixWords.direction(stop.offset()) + "."));
    }

    private static List<Line> move(Advice.MoveByHand move, NightState night) {
        List<Line> lines = new ArrayList<>();
        lines.add(Tag.MOVE.line("the mount by hand, roughly. It is too far off for the screws."));
        lines.add(Tag.CARE.line("The mount is heavy: two people. Clamp the tube first so that it cannot swing; "
                + night.begun().rig().kind().weightCaution() + "; keep the tripod from tipping."));
        // Each with a tag: where tagged lines become steps, an untagged one would be read as part of the caution.
        addMove(
                lines,
                Tag.SWING,
                move.azimuth(),
                " (" + StarFindingWords.fists(move.azimuth().abs()) + " along the horizon"
                        + fields(
                                move.azimuth()
                                        .times(night.begun().site().latitude().cos()),
                                night) + ")",
                " to the right, facing the pole.",
                " to the left, facing the pole.");
        addMove(
                lines,
                Tag.TILT,
                move.altitude(),
                " (" + StarFindingWords.fists(move.altitude().abs()) + fields(move.altitude(), night) + ")",
                " up, by the wedge's scale.",
                " down, by the wedge's scale.");
        lines.add(Tag.THEN.line(Wrapping.unbroken("polewright knock") + ", and read compass and scale again."));
        return lines;
    }

    // A hand positions a mount to about a degree: moves of less than half of one are not mentioned.
    private static void addMove(List<Line> lines, Tag verb, Angle move, String inView, String forward, String back) {
        if (Math.abs(move.degrees()) >= 0.5) {
            lines.add(verb.line("about " + Math.round(Math.abs(move.degrees())) + "°" + inView
                    + (move.radians() > 0 ? forward : back)));
        }
    }

    /** {@code , 1½ fields of the finder}; empty without an optic. */
    private static String fields(Angle onSky, NightState night) {
        return night.situation()
                .rig()
                .widestOptic()
                .map(optic -> ", "
                        + PoleStarWords.fields(
                                onSky.abs().degrees() / optic.field().degrees())
                        + " of the " + optic.name())
                .orElse("");
    }

    private static List<Line> waiting(NightState night) {
        List<Line> lines = new ArrayList<>();
        Optional<DarknessWait> waiting = DarknessWait.of(night);
        lines.add(waiting.map(until -> Tag.WAIT.line("until the Sun is down at " + clock(until.sunDown()) + ", in "
                        + TimeSpans.hoursAndMinutes(Duration.between(night.now(), until.sunDown())) + "."))
                .orElse(Tag.WAIT.line("for dark; the Sun does not set here today.")));
        lines.add(Tag.WHY.line("Everything that can be measured by day is in the log; the rest needs stars."));
        waiting.ifPresent(until -> {
            String stars = until.starsShow()
                    .map(show -> " The first bright stars appear about " + clock(show) + ".")
                    .orElse("");
            lines.add(Tag.NEXT.line(next(until.next()) + "." + stars));
        });
        mistakeIfDark(night).ifPresent(lines::add);
        lines.add(Tag.CARE.line("Keep tube and finder capped while the Sun is up."));
        return lines;
    }

    /** A hint in case it is dark although the Sun should be up: then the clock or the site is wrong. */
    private static Optional<Line> mistakeIfDark(NightState night) {
        return night.mistakeIfDark()
                .map(mistaken -> Tag.NOTE.line(
                        "By this clock and site the Sun is up. If it is dark where you are, one of them is wrong"
                                + mistaken.words()
                                        .map(words -> ": it would be dark if " + words)
                                        .orElse("")
                                + "."));
    }

    /** What follows when the Sun is down. */
    private static String next(Advice advice) {
        if (advice instanceof Advice.TakeSighting take) {
            return capitalised(take.kind().words());
        }
        return advice instanceof Advice.WaitForSky
                ? "Every star sighting was skipped tonight. Undo a skip, or wait for a clear sky"
                : "Take a sighting of a star";
    }

    static String clock(Instant at) {
        return Wrapping.unbroken(CLOCK.format(at));
    }

    private static List<Line> sight(Advice.TakeSighting take, NightState night) {
        List<Line> lines = new ArrayList<>();
        lines.add(Tag.SIGHT.line(sighting(take) + "."));
        take.star().ifPresent(star -> lines.add(Tag.STAR.line(StarWords.place(star) + ".")));
        lines.add(Tag.WHY.line(capitalised(take.reason()) + "."));
        if (take.kind() == SightingKind.SHADOW) {
            mistakeIfDark(night).ifPresent(lines::add);
        }
        lines.addAll(SightingCommandWords.of(take, night));
        return lines;
    }

    /** The star's name, because it may be hours from where its kind of drift is most useful. */
    private static String sighting(Advice.TakeSighting take) {
        boolean isDrift =
                take.kind() == SightingKind.DRIFT_ON_MERIDIAN || take.kind() == SightingKind.DRIFT_EAST_OR_WEST;
        if (isDrift && take.star().isPresent()) {
            return "Track " + take.star().get().name() + " for " + minutes(take.watch())
                    + ", and see how far it drifts north or south";
        }
        return capitalised(take.kind().words()) + (take.watch().isZero() ? "" : " in " + minutes(take.watch()));
    }

    private static String minutes(Duration watch) {
        return watch.toMinutes() + (watch.toMinutes() == 1 ? " minute" : " minutes");
    }

    private static String capitalised(String sentence) {
        return Character.toUpperCase(sentence.charAt(0)) + sentence.substring(1);
    }

    private record Lines(NightState night) implements Advice.Visitor<List<Line>> {
        @Override
        public List<Line> turnScrews(Advice.TurnScrews turn) {
            return turn(turn, night);
        }

        @Override
        public List<Line> moveByHand(Advice.MoveByHand move) {
            return move(move, night);
        }

        @Override
        public List<Line> takeSighting(Advice.TakeSighting take) {
            return sight(take, night);
        }

        @Override
        public List<Line> waitForDark(Advice.WaitForDark advice) {
            return waiting(night);
        }

        @Override
        public List<Line> waitForSky(Advice.WaitForSky wait) {
            return SkipWords.waiting(wait);
        }

        @Override
        public List<Line> clamp(Advice.Clamp clamp) {
            return AdviceWords.clamp(clamp);
        }

        @Override
        public List<Line> stop(Advice.Stop stop) {
            return AdviceWords.stop(stop, night);
        }
    }
}
