package polewright.web.form;

import static polewright.web.form.Field.option;
import static polewright.web.form.Field.positional;

import java.util.List;
import polewright.web.form.Field.Choice;
import polewright.web.form.Field.Figure;
import polewright.web.form.Field.Option;
import polewright.web.form.Field.Tick;
import polewright.web.form.Field.Words;

/** Forms for the actions of a practice. */
public final class PracticeForms {
    private static final Figure DEGREES = SightingForms.DEGREES_EITHER_WAY;

    public static final CommandForm BEGIN = practice(
            "begin",
            "Begin a practice",
            "A night by day: a simulated wedge with a hidden offset, and time that passes only when you do"
                    + " something.",
            "Begin",
            option("seed", "Practice number", "Another number hides another offset.", new Figure("")),
            option("south", "Under the southern sky", "", new Tick()),
            option("site", "Or at your own site", "54.60,-2.90,240. Needs the time below.", new Words())
                    .seldom(),
            option("at", "When it begins (in the dark)", "With time zone: 2026-11-25T20:00Z.", new Words())
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
                            new Choice(List.of(new Option("azimuth", "azimuth"), new Option("altitude", "altitude"))))
                    .required(),
            positional("turns", "Turns, clockwise", "1/4, 1.25 or 1/2 ccw", new Words())
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
            option("with", "Seen through", "Empty: the optic with the widest field.", new Words()));
    public static final CommandForm DRIFT = new CommandForm(
            "practice-drift",
            "Watch a star drift",
            "",
            List.of("practice", "look", "drift"),
            List.of(
                    SightingForms.STAR,
                    option("minutes", "How long", "", new Figure("min")).required()),
            "Watch it",
            false,
            CommandForm.Kind.PRACTICE);
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
            positional("minutes", "Minutes", "", new Figure("min")).required());

    private PracticeForms() {}

    static List<CommandForm> all() {
        return List.of(BEGIN, SCREW, CLAMP, UNCLAMP, MOVE, COMPASS, SCALE, ROCKING, DRIFT, FRAME, WAIT);
    }

    private static CommandForm practice(String word, String title, String intro, String button, Field... fields) {
        return new CommandForm(
                "practice-" + word,
                title,
                intro,
                List.of("practice", word),
                List.of(fields),
                button,
                false,
                CommandForm.Kind.PRACTICE);
    }

    private static CommandForm look(String what, String title, Field... fields) {
        return new CommandForm(
                "practice-" + what,
                title,
                "",
                List.of("practice", "look", what),
                List.of(fields),
                "Look",
                false,
                CommandForm.Kind.PRACTICE);
    }
}
