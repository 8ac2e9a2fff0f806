package polewright.web.form;

import static polewright.operations.action.Argument.option;
import static polewright.operations.action.Argument.positional;

import java.util.List;
import java.util.Optional;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Unit;

/** Forms for the actions of a practice. */
public final class PracticeForms {
    private static final Figure DEGREES = Figure.signed(Unit.DEGREES);

    public static final CommandForm BEGIN = practice(
            "begin",
            "Begin a practice",
            "A night by day: a simulated wedge with a hidden offset, and time that passes only when you do"
                    + " something.",
            "Begin",
            option("seed", "Practice number", "Another number hides another offset.", Figure.of(Unit.NONE)),
            option("south", "Under the southern sky", "", new Tick()),
            option("site", "Or at your own site", "54.60,-2.90,240. Needs the time below.", FieldTypes.WORDS)
                    .seldom(),
            option("at", "When it begins (in the dark)", "With time zone: 2026-11-25T20:00Z.", FieldTypes.WORDS)
                    .seldom(),
            option("camera", "With a camera on the tube", "", new Tick()));
    public static final CommandForm SCREW = practice(
            "screw",
            "Turn a screw",
            "",
            "Turn",
            positional(
                            "screw",
                            "Screw",
                            "",
                            FieldTypes.choice("", new Option("azimuth", "azimuth"), new Option("altitude", "altitude")))
                    .required(),
            positional("turns", "Turns, clockwise", "1/4, 1.25 or 1/2 ccw", FieldTypes.WORDS)
                    .required());
    public static final CommandForm CLAMP = practice("clamp", "Tighten the clamps", "", "Tighten");
    public static final CommandForm UNCLAMP = practice("unclamp", "Loosen the clamps", "", "Loosen");
    public static final CommandForm MOVE = practice(
            "move",
            "Move the whole mount by hand",
            "Facing the pole.",
            "Move",
            option("right", "To the right", "Negative for left.", DEGREES),
            option("up", "Up", "Negative for down.", DEGREES));
    public static final CommandForm COMPASS = look("compass", "Read the compass");
    public static final CommandForm SCALE = look("scale", "Read level and scale");
    public static final CommandForm ROCKING = look(
            "rocking",
            "Swing in right ascension and look",
            option("with", "Seen through", "Empty: the optic with the widest field.", FieldTypes.WORDS));
    public static final CommandForm DRIFT = new CommandForm(
            "practice-drift",
            "Watch a star drift",
            "",
            List.of("practice", "look", "drift"),
            List.of(
                    positional("star", "Star", "Such as polaris, rigel, or \"alp Lyr\".", FieldTypes.WORDS)
                            .required(),
                    option("minutes", "How long", "", Figure.of(Unit.MINUTES)).required()),
            "Watch it",
            false,
            CommandForm.Kind.PRACTICE,
            Optional.empty());
    public static final CommandForm FRAME = practice(
            "frame",
            "Take a frame",
            "",
            "Take it",
            option("turned", "Right ascension turned from home by", "", DEGREES).required());
    public static final CommandForm WAIT = practice(
            "wait",
            "Let time pass",
            "",
            "Wait",
            positional("minutes", "Minutes", "", Figure.of(Unit.MINUTES)).required());

    private PracticeForms() {}

    static List<CommandForm> all() {
        return List.of(BEGIN, SCREW, CLAMP, UNCLAMP, MOVE, COMPASS, SCALE, ROCKING, DRIFT, FRAME, WAIT);
    }

    private static CommandForm practice(String word, String title, String intro, String button, Argument<?>... fields) {
        return new CommandForm(
                "practice-" + word,
                title,
                intro,
                List.of("practice", word),
                List.of(fields),
                button,
                false,
                CommandForm.Kind.PRACTICE,
                Optional.empty());
    }

    private static CommandForm look(String what, String title, Argument<?>... fields) {
        return new CommandForm(
                "practice-" + what,
                title,
                "",
                List.of("practice", "look", what),
                List.of(fields),
                "Look",
                false,
                CommandForm.Kind.PRACTICE,
                Optional.empty());
    }
}
