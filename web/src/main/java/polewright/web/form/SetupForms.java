package polewright.web.form;

import java.util.List;
import java.util.stream.Stream;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Option;
import polewright.operations.setup.BeginNight;
import polewright.operations.setup.RigActions;
import polewright.operations.setup.ScrewArguments;
import polewright.operations.setup.SiteActions;
import polewright.operations.setup.SkylineActions;

/** Forms that begin a night, and correct its site, skyline and rig. */
public final class SetupForms {
    private static final List<Option> TIMES_AS_FAR = List.of(
            new Option("0.5", "50 % less"),
            new Option("0.75", "25 % less"),
            new Option("1.25", "25 % farther"),
            new Option("1.5", "50 % farther"),
            new Option("2", "twice as far"));

    public static final CommandForm BEGIN = CommandForm.of(BeginNight.BEGIN);
    public static final CommandForm HORIZON =
            CommandForm.of(SkylineActions.SKYLINE).withFields(List.of(SkylineActions.CORNERS.required()));
    public static final CommandForm OPEN_SKY = CommandForm.of(SkylineActions.OPEN_SKY)
            .named("open-sky", "Open sky", "Removes all corners of the skyline.");
    public static final CommandForm RIG = CommandForm.of(RigActions.CORRECT_RIG).withFields(rigFields());
    public static final CommandForm KNOWN_RIG = CommandForm.of(RigActions.CORRECT_RIG)
            .named("known-rig", "Another rig", "")
            .sentBy("Use this rig")
            .withFields(List.of(RigActions.KNOWN.usual().required()));
    public static final CommandForm SITE = CommandForm.of(SiteActions.CORRECT_SITE);

    private SetupForms() {}

    static List<CommandForm> all() {
        return List.of(BEGIN, HORIZON, OPEN_SKY, RIG, KNOWN_RIG, SITE);
    }

    /** The screws that work the opposite way first; how far they go is chosen, not typed. */
    private static List<Argument<?>> rigFields() {
        List<ScrewArguments> screws = List.of(ScrewArguments.AZIMUTH, ScrewArguments.ALTITUDE);
        List<Argument<?>> first = Stream.concat(
                        screws.stream().map(ScrewArguments::reversed),
                        screws.stream().map(SetupForms::howFar))
                .<Argument<?>>map(argument -> argument)
                .toList();
        List<String> names = first.stream().<String>map(Argument::name).toList();
        return Stream.concat(
                        first.stream(),
                        RigActions.figures().stream().filter(argument -> !names.contains(argument.name())))
                .<Argument<?>>map(argument -> argument)
                .toList();
    }

    private static Argument<Double> howFar(ScrewArguments screw) {
        Argument<Double> gain = screw.gain();
        return Argument.option(
                gain.name(),
                "One turn of the " + screw.screw() + " screw goes",
                "",
                new Choice<>("", "as entered", TIMES_AS_FAR, gain.type()::parse));
    }
}
