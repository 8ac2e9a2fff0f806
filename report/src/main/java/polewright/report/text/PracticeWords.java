package polewright.report.text;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import polewright.alignment.sighting.ReadLength;
import polewright.mount.rig.Optic;
import polewright.simulation.practice.CompletedAction;
import polewright.simulation.practice.Debrief;
import polewright.simulation.practice.ObservedReadings;
import polewright.simulation.practice.PracticeAction;
import polewright.simulation.practice.PracticeState;
import polewright.simulation.practice.Scenario;
import polewright.sky.PlainNumber;

/** A practice night in words: what an action showed, and at the end where the minutes went. */
public final class PracticeWords {
    private PracticeWords() {}

    /** The beginning. */
    public static List<String> begun(Scenario scenario) {
        return List.of(
                "A practice at " + scenario.siteName() + " (" + AngleWords.site(scenario.site()) + "), from seed "
                        + scenario.seed() + ". It is " + AxisWords.clock(scenario.from()) + ".",
                "The axis is a few degrees off. You will see how far in the debrief. Time passes only when you do"
                        + " something. The clamps are loose.",
                "ASK   " + Wrapping.unbroken("polewright practice do -- next"));
    }

    /** An action, in one or two sentences, and how to log what it showed. */
    public static List<String> done(CompletedAction done) {
        List<String> lines = new ArrayList<>();
        lines.add(AxisWords.clock(done.to()) + ", " + TimeSpans.of(done.took()) + " later: " + words(done) + ".");
        lines.addAll(logIt(done));
        return lines;
    }

    /** The state of a practice night, without the truth. */
    public static String standing(PracticeState state) {
        return "It is " + AxisWords.clock(state.now()) + " in the practice; the clamps are "
                + (state.clamped() ? "tight" : "loose") + ".";
    }

    private static String words(CompletedAction done) {
        return done.seen().accept(new Seen(done.action()));
    }

    private static String words(PracticeAction action) {
        return action.accept(new ActionWords());
    }

    private static List<String> logIt(CompletedAction done) {
        String typed = done.seen().accept(new Typed(done.action()));
        if (typed.isEmpty()) {
            return List.of();
        }
        List<String> lines = new ArrayList<>(List.of("LOG   it with:"));
        lines.addAll(Wrapping.command("polewright practice do -- " + typed));
        return lines;
    }

    private static String way(ObservedReadings.Drifted drifted) {
        return drifted.northward() ? "north" : "south";
    }

    private static String quoted(String name) {
        String typed = name.toLowerCase(Locale.ROOT);
        return typed.contains(" ") ? '"' + typed + '"' : typed;
    }

    /** The end. */
    public static List<String> debrief(Debrief debrief) {
        List<String> lines = new ArrayList<>();
        lines.add("THE TRUTH");
        lines.add("  at first  " + AxisWords.direction(debrief.atFirst()) + " ("
                + AxisWords.fine(debrief.atFirst().distance()) + " off)");
        lines.add("  now       " + AxisWords.direction(debrief.truth()) + " ("
                + AxisWords.fine(debrief.truth().distance()) + " off)");
        lines.add(debrief.within() ? "  Within the allowance." : "  Outside the allowance.");
        lines.add("");
        lines.add("MINUTES " + minutes(debrief.total()) + " in all");
        Map<PracticeAction.Kind, Duration> sorted = new EnumMap<>(PracticeAction.Kind.class);
        sorted.putAll(debrief.byKind());
        sorted.forEach((kind, took) -> lines.add(
                "  " + Wrapping.unbroken(String.format(Locale.ROOT, "%5s", minutes(took))) + "  " + kind(kind)));
        lines.add("");
        lines.add("NOT NEEDED");
        if (debrief.unneeded().isEmpty()) {
            lines.add("  Nothing: every minute was needed.");
        }
        debrief.unneeded()
                .forEach(
                        waste -> lines.add("  " + AxisWords.clock(waste.action().from()) + ": "
                                + words(waste.action().action()) + " (" + TimeSpans.of(waste.cost()) + "): "
                                + reason(waste.reason()) + "."));
        lines.add("");
        lines.add("ON THE SAME WEDGE");
        lines.add("  " + routine("following the advice", debrief.advised()));
        lines.add("  " + routine("with a handbook and no advice", debrief.plain()));
        return lines;
    }

    private static String routine(String who, Debrief.Routine routine) {
        return "Someone " + who + " stops after " + minutes(routine.took()) + " minutes, "
                + (routine.within() ? "within" : "outside") + " the allowance.";
    }

    /** {@code 4}, {@code 2.5}. */
    private static String minutes(Duration span) {
        return PlainNumber.of(Math.rint(span.toSeconds() / 6.0) / 10);
    }

    private static String kind(PracticeAction.Kind kind) {
        return switch (kind) {
            case READING -> "compass and scale";
            case EYEPIECE -> "looking while swinging in RA";
            case DRIFT -> "watching stars drift";
            case FRAMES -> "taking frames";
            case TURNING -> "turning screws";
            case MOVING -> "moving the mount by hand";
            case CLAMPING -> "clamping";
            case WAITING -> "waiting";
        };
    }

    private static String reason(Debrief.Reason reason) {
        return switch (reason) {
            case AFTER_STOP -> "the advice had said stop";
            case NOT_LOGGED -> "the result was not logged";
            case TOO_FAR -> "it overshot by more than the allowance";
            case WRONG_WAY -> "it moved the axis farther off";
            case WAITED -> "the sky moves on";
        };
    }

    private static final class ActionWords implements PracticeAction.Visitor<String> {
        @Override
        public String turnScrew(PracticeAction.TurnScrew turn) {
            return turn.screw().name().toLowerCase(Locale.ROOT) + " screw turned "
                    + Fractions.turns(Math.abs(turn.turns().net()))
                    + (turn.turns().net() < 0 ? " counter-clockwise" : " clockwise");
        }

        @Override
        public String moveByHand(PracticeAction.MoveByHand action) {
            return "the mount is moved by hand";
        }

        @Override
        public String clamp(PracticeAction.Clamp action) {
            return "the clamps are tight";
        }

        @Override
        public String unclamp(PracticeAction.Unclamp action) {
            return "the clamps are loose";
        }

        @Override
        public String rockAndLook(PracticeAction.RockAndLook look) {
            return "looked through the " + look.optic() + " while swinging in RA";
        }

        @Override
        public String readCompass(PracticeAction.ReadCompass action) {
            return "read the compass";
        }

        @Override
        public String readScale(PracticeAction.ReadScale action) {
            return "read the scale";
        }

        @Override
        public String watchStar(PracticeAction.WatchStar watch) {
            return "watched " + watch.star();
        }

        @Override
        public String takeFrame(PracticeAction.TakeFrame action) {
            return "took a frame";
        }

        @Override
        public String waiting(PracticeAction.Wait action) {
            return "waited";
        }
    }

    /** What an action showed, or what was done if it showed nothing. */
    private record Seen(PracticeAction action) implements ObservedReadings.Visitor<String> {
        @Override
        public String nothing(ObservedReadings.Nothing seen) {
            return words(action);
        }

        @Override
        public String onCompass(ObservedReadings.OnCompass seen) {
            return "the compass reads " + PlainNumber.of(seen.bearingDeg()) + "°";
        }

        @Override
        public String onScale(ObservedReadings.OnScale seen) {
            return "the scale reads " + PlainNumber.of(seen.altitudeDeg()) + "°";
        }

        @Override
        public String whileRocking(ObservedReadings.WhileRocking seen) {
            return seen.star()
                    .map(star -> star.star() + " is " + PlainNumber.of(star.fields()) + " of the field from the"
                            + " centre of rotation, toward " + PlainNumber.of(star.clock()) + " on the clock")
                    .orElse("no star you know is in the field of the "
                            + seen.optic().name());
        }

        @Override
        public String drifted(ObservedReadings.Drifted seen) {
            return seen.star() + " drifted " + PlainNumber.of(seen.moved().count()) + " "
                    + seen.moved().unit().words() + " " + way(seen) + " in " + TimeSpans.of(seen.length());
        }

        @Override
        public String frameTaken(ObservedReadings.FrameTaken seen) {
            return "frame " + seen.number() + " is taken, "
                    + PlainNumber.of(Math.rint(seen.turned().degrees())) + "° from home in right ascension";
        }
    }

    /** The command that logs it, without its first words; empty if there is none. */
    private record Typed(PracticeAction action) implements ObservedReadings.Visitor<String> {
        @Override
        public String nothing(ObservedReadings.Nothing seen) {
            return action.accept(new TypedMove());
        }

        @Override
        public String onCompass(ObservedReadings.OnCompass seen) {
            return "sight compass " + PlainNumber.of(seen.bearingDeg());
        }

        @Override
        public String onScale(ObservedReadings.OnScale seen) {
            return "sight scale " + PlainNumber.of(seen.altitudeDeg());
        }

        @Override
        public String whileRocking(ObservedReadings.WhileRocking seen) {
            return seen.star()
                    .map(star -> "sight still " + quoted(star.star()) + " --distance " + PlainNumber.of(star.fields())
                            + " --toward " + PlainNumber.of(star.clock()) + " --with "
                            + quoted(seen.optic().name()))
                    .orElse("");
        }

        @Override
        public String drifted(ObservedReadings.Drifted seen) {
            return "sight drift " + quoted(seen.star()) + " --minutes "
                    + PlainNumber.of(seen.length().toSeconds() / 60.0) + " --moved "
                    + PlainNumber.of(seen.moved().count()) + " --toward " + way(seen)
                    + (seen.moved().unit() == ReadLength.Unit.DIVISIONS
                            ? seen.optic()
                                    .map(Optic::name)
                                    .map(name -> " --with " + quoted(name))
                                    .orElse("")
                            : " --unit arcsec");
        }

        @Override
        public String frameTaken(ObservedReadings.FrameTaken seen) {
            return "";
        }
    }

    /** The same for an action that showed nothing. */
    private static final class TypedMove implements PracticeAction.Visitor<String> {
        @Override
        public String turnScrew(PracticeAction.TurnScrew action) {
            return action.turns().isPastAndBack()
                    ? ""
                    : "turn --" + action.screw().name().toLowerCase(Locale.ROOT) + " "
                            + PlainNumber.asTyped(action.turns().net());
        }

        @Override
        public String moveByHand(PracticeAction.MoveByHand action) {
            return "knock";
        }

        @Override
        public String clamp(PracticeAction.Clamp action) {
            return "clamp";
        }

        @Override
        public String unclamp(PracticeAction.Unclamp action) {
            return "unclamp";
        }

        @Override
        public String rockAndLook(PracticeAction.RockAndLook action) {
            return "";
        }

        @Override
        public String readCompass(PracticeAction.ReadCompass action) {
            return "";
        }

        @Override
        public String readScale(PracticeAction.ReadScale action) {
            return "";
        }

        @Override
        public String watchStar(PracticeAction.WatchStar action) {
            return "";
        }

        @Override
        public String takeFrame(PracticeAction.TakeFrame action) {
            return "";
        }

        @Override
        public String waiting(PracticeAction.Wait action) {
            return "";
        }
    }
}
