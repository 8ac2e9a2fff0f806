package polewright.web.form;

import static polewright.operations.action.Argument.option;
import static polewright.operations.action.Argument.positional;

import java.util.List;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.action.ArgumentType.Tick;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Unit;
import polewright.operations.night.TargetAction;

/** Forms for tonight's work, which sets how far off the pole the axis may be. */
public final class WorkForms {
    private static final Words<String> WORDS = FieldTypes.WORDS;
    private static final Figure DEGREES = Figure.of(Unit.DEGREES);
    private static final Argument<?> CAMERA = option("camera", "Camera", "One of the rig's, if it has several.", WORDS)
            .seldom();
    private static final Argument<?> FOCAL_LENGTH = option(
            "focal-length", "Focal length", "For imaging, if the rig has no camera.", Figure.of(Unit.MILLIMETRES));
    private static final Argument<?> PIXEL = option("pixel", "Pixel", "", Figure.of(Unit.MICROMETRES));
    private static final Argument<?> SIZE = option("size", "Sensor size in pixels", "4000x3000 is usual.", WORDS)
            .seldom();
    private static final Argument<?> BINNING =
            option("binning", "Binning", "1 is usual.", Figure.of(Unit.NONE)).seldom();
    private static final Argument<?> WORK_NAME = positional(
                    "name", "Name", "An existing item of that name is changed.", WORDS)
            .required();
    private static final List<Argument<?>> REGION = List.of(
            option("target", "Target", "vega, M 42, jupiter; empty for anything high enough.", WORDS),
            option("at", "When it begins", "With zone: 2026-11-25T20:00Z. Empty: now.", WORDS)
                    .seldom(),
            option("above", "Or anything above", "30 is usual.", DEGREES).seldom(),
            option("to-the-pole", "Including the pole", "Otherwise the 10° around it are left out.", new Tick())
                    .seldom(),
            option(
                            "declination",
                            "Or objects at this declination",
                            "With the hours below.",
                            Figure.signed(Unit.DEGREES))
                    .seldom(),
            option("hours", "Hours from the meridian", "2E,1.5W: from, to.", WORDS)
                    .seldom());

    public static final CommandForm ALLOW_FOR = work(
            "allow-for",
            "What tonight is for",
            "The tolerance of the polar axis follows from it.",
            List.of("allow"),
            option("for", "Tonight is for", "", purposes("choose")).required(),
            CAMERA,
            FOCAL_LENGTH,
            PIXEL,
            SIZE,
            BINNING);
    public static final CommandForm ALLOW_ALSO = work(
            "allow-also",
            "Also for",
            "Added to tonight's work.",
            List.of("allow"),
            option("also", "Also for", "", purposes("choose")).required(),
            CAMERA,
            FOCAL_LENGTH,
            PIXEL,
            SIZE,
            BINNING);
    public static final CommandForm ALLOW_LIMIT = work(
            "allow-limit",
            "A plain limit instead",
            "Whatever the work.",
            List.of("allow"),
            positional(
                            "arcmin",
                            "How far off the pole the axis may be",
                            "5 suits visual observing.",
                            Figure.of(Unit.ARCMINUTES))
                    .required());
    public static final CommandForm ALLOW_LOOK = work(
            "allow-look",
            "Visual observing of your own",
            "How long must an object stay in the field with the mount untouched?",
            List.of("allow", "look"),
            Stream.concat(
                            Stream.of(
                                    WORK_NAME,
                                    option("eyepiece", "Eyepiece", "One of the rig's, such as finder.", WORDS),
                                    option("field", "Or the true field, edge to edge", "", DEGREES),
                                    option("stay", "Time in the field", "15 is usual.", Figure.of(Unit.MINUTES)),
                                    option("go-to", "Go-tos must land within", "", Figure.of(Unit.ARCMINUTES))
                                            .seldom(),
                                    option("by-hand", "No go-to: pushed by hand from star to star", "", new Tick())),
                            REGION.stream())
                    .toArray(Argument<?>[]::new));
    public static final CommandForm ALLOW_SHOT = work(
            "allow-shot",
            "Imaging of your own",
            "",
            List.of("allow", "shot"),
            Stream.of(
                            Stream.of(
                                    WORK_NAME,
                                    option("exposure", "One exposure", "", Figure.of(Unit.SECONDS))
                                            .required(),
                                    option("total", "All exposures together", "60 is usual.", Figure.of(Unit.MINUTES)),
                                    option(
                                            "guided",
                                            "Guided: from the centre to the guide star",
                                            "Empty if unguided; 30 is usual.",
                                            Figure.of(Unit.ARCMINUTES)),
                                    option("tolerance", "Longest acceptable trail", "2.5 arcseconds, or 2px.", WORDS)
                                            .seldom(),
                                    option("seeing", "Seeing", "3 is usual.", Figure.of(Unit.ARCSECONDS))
                                            .seldom()),
                            Stream.of(CAMERA, FOCAL_LENGTH, PIXEL, SIZE, BINNING),
                            REGION.stream())
                    .flatMap(fields -> fields)
                    .toArray(Argument<?>[]::new));
    public static final CommandForm ALLOW_DROP = work(
            "allow-drop",
            "Remove an item",
            "",
            List.of("allow", "drop"),
            positional("name", "What", "Its name above.", WORDS).required());
    public static final CommandForm TARGET = CommandForm.of(TargetAction.TARGET);

    private WorkForms() {}

    static List<CommandForm> all() {
        return List.of(ALLOW_FOR, ALLOW_ALSO, ALLOW_LIMIT, ALLOW_LOOK, ALLOW_SHOT, ALLOW_DROP, TARGET);
    }

    private static CommandForm work(
            String id, String title, String intro, List<String> command, Argument<?>... fields) {
        return new CommandForm(id, title, intro, command, List.of(fields), "Set it", false);
    }

    static Choice<String> purposes(String none) {
        return FieldTypes.choice(
                none,
                new Option("casual look", "a casual look"),
                new Option("look by hand", "a look by hand, without a go-to"),
                new Option("planets at high power", "planets at high power"),
                new Option("short subs", "short subs"),
                new Option("long guided subs", "long guided subs"));
    }
}
