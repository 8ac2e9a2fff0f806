package polewright.web.form;

import static polewright.operations.action.Argument.option;

import java.util.List;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.Unit;

/** Forms that correct the rig and the site. */
public final class SetupForms {
    private static final List<String> CORRECT_RIG = List.of("rig", "correct");
    private static final Figure TURNS = Figure.of(Unit.TURNS);
    private static final Choice<String> TIMES_AS_FAR = FieldTypes.choice(
            "as entered",
            new Option("0.5", "50 % less"),
            new Option("0.75", "25 % less"),
            new Option("1.25", "25 % farther"),
            new Option("1.5", "50 % farther"),
            new Option("2", "twice as far"));

    public static final CommandForm RIG = new CommandForm(
            "correct-rig",
            "Correct the rig",
            "The whole night is recomputed. Log turns as you made them, even if the rig was wrong.",
            CORRECT_RIG,
            List.of(
                    option("azimuth-reversed", "Azimuth screw works the opposite way", "", new Tick()),
                    option("altitude-reversed", "Altitude screw works the opposite way", "", new Tick()),
                    option("azimuth-gain", "One turn of the azimuth screw goes", "", TIMES_AS_FAR),
                    option("altitude-gain", "One turn of the altitude screw goes", "", TIMES_AS_FAR),
                    option("azimuth-per-turn", "Or: azimuth screw, per turn", "", Figure.of(Unit.DEGREES))
                            .seldom(),
                    option("altitude-per-turn", "Or: altitude screw, per turn", "", Figure.of(Unit.DEGREES))
                            .seldom(),
                    option("azimuth-play", "Backlash of the azimuth screw", "", TURNS)
                            .seldom(),
                    option("altitude-play", "Backlash of the altitude screw", "", TURNS)
                            .seldom(),
                    option("clamping", "Clamping shifts the axis by", "", Figure.of(Unit.ARCMINUTES))
                            .seldom(),
                    option("level", "The base is level to", "", Figure.of(Unit.DEGREES))
                            .seldom(),
                    option("optic", "Finder or eyepiece", "Its name, for the next three.", FieldTypes.WORDS)
                            .seldom(),
                    option(
                                    "view",
                                    "Its view",
                                    "",
                                    FieldTypes.choice(
                                            "as entered",
                                            new Option("erect", "erect, as to the naked eye"),
                                            new Option("inverted", "upside down"),
                                            new Option("mirrored", "mirrored, by a star diagonal")))
                            .seldom(),
                    option("field", "Its true field, edge to edge", "", Figure.of(Unit.DEGREES))
                            .seldom(),
                    option("division", "One division of its reticle", "", Figure.of(Unit.ARCSECONDS))
                            .seldom()),
            "Correct the rig",
            false);
    public static final CommandForm KNOWN_RIG = new CommandForm(
            "known-rig",
            "Another rig",
            "",
            CORRECT_RIG,
            List.of(option("known", "Name of the rig", "As in an earlier night.", FieldTypes.WORDS)
                    .required()),
            "Use this rig",
            false);
    public static final CommandForm SITE = new CommandForm(
            "correct-site",
            "Correct the site",
            "The whole night is recomputed.",
            List.of("site", "correct"),
            List.of(
                    option(
                            "site",
                            "Site: latitude, longitude, height",
                            "54.60,-2.90,240: degrees, north and east positive; metres.",
                            FieldTypes.WORDS),
                    option("other-latitude", "Or: the latitude has the wrong sign", "", new Tick()),
                    option("other-longitude", "Or: the longitude has the wrong sign", "", new Tick()),
                    option("swapped", "Or: latitude and longitude were swapped", "", new Tick()),
                    option("height", "Or only the height", "", Figure.signed(Unit.METRES))
                            .seldom()),
            "Correct the site",
            false);

    private SetupForms() {}

    static List<CommandForm> all() {
        return List.of(RIG, KNOWN_RIG, SITE);
    }
}
