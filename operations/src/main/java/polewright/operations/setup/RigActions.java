package polewright.operations.setup;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.View;
import polewright.operations.action.Action;
import polewright.operations.action.ActionContext;
import polewright.operations.action.Argument;
import polewright.operations.action.ArgumentType.Choice;
import polewright.operations.action.ArgumentType.Figure;
import polewright.operations.action.ArgumentType.Words;
import polewright.operations.action.Entries;
import polewright.operations.action.Unit;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/** Corrects tonight's rig: all of it, or single figures. */
public final class RigActions {
    private static final Argument<Path> RIG = RigFile.RIG;
    public static final Argument<String> KNOWN = Argument.option(
                    "known", "Name of the rig", "As in an earlier night.", Words.plain("NAME"))
            .seldom();
    private static final Argument<Double> CLAMPING = Argument.option(
                    "clamping",
                    "Shift of the axis on clamping",
                    "1 sigma in each direction.",
                    Figure.of(Unit.ARCMINUTES))
            .seldom();
    private static final Argument<Double> LEVEL = Argument.option(
                    "level", "Tilt of the base", "1 sigma.", Figure.of(Unit.DEGREES))
            .seldom();
    private static final Argument<String> OPTIC = Argument.option(
                    "optic",
                    "Name of the finder or eyepiece to correct",
                    "With its view, field or division.",
                    Words.plain("NAME"))
            .seldom();
    private static final Argument<Orientation> VIEW = Argument.option(
                    "view",
                    "Its view",
                    "",
                    Choice.of(
                            Orientation.class,
                            "VIEW",
                            "as entered",
                            Map.of(
                                    Orientation.ERECT, "erect, as by eye",
                                    Orientation.INVERTED, "upside down",
                                    Orientation.MIRRORED, "mirrored, by a star diagonal")))
            .seldom();
    private static final Argument<Double> FIELD = Argument.option(
                    "field", "Its true field, edge to edge", "", Figure.of(Unit.DEGREES))
            .seldom();
    private static final Argument<Double> DIVISION = Argument.option(
                    "division", "One division of its reticle", "", Figure.of(Unit.ARCSECONDS))
            .seldom();

    private static final List<Argument<?>> FIGURES = Stream.of(
                    ScrewArguments.AZIMUTH.all().stream(),
                    ScrewArguments.ALTITUDE.all().stream(),
                    Stream.of(CLAMPING, LEVEL, OPTIC, VIEW, FIELD, DIVISION))
            .flatMap(arguments -> arguments)
            .<Argument<?>>map(argument -> argument)
            .toList();

    public static final Action CORRECT_RIG = Action.of(
                    "correct-rig",
                    List.of("rig", "correct"),
                    "Correct the rig",
                    "Give another rig, or only the figures that were wrong. The whole night is recomputed; nothing that was"
                            + " logged is lost. Log turns as you made them, even if the rig was wrong.",
                    RigActions::corrected)
            .taking(RIG, KNOWN)
            .taking(FIGURES)
            .sentBy("Correct the rig")
            .forExample("", "--azimuth-clockwise left")
            .forExample("", "--altitude-gain 0.75 --altitude-play 0.3")
            .forExample("", "--optic finder --view erect")
            .forExample("", "--rig rig.json");

    private RigActions() {}

    /** The single figures, in the order in which they are asked for. */
    public static List<Argument<?>> figures() {
        return FIGURES;
    }

    private static List<NightEvent> corrected(Entries entries, ActionContext context) {
        Rig before = context.rig();
        RigCorrection correction = another(entries, context)
                .<RigCorrection>map(RigCorrection.AnotherRig::new)
                .orElseGet(() -> figures(entries, before));
        if (correction.appliedTo(before).equals(before)) {
            throw new InputRefused(
                    "the rig already has these values", "give the figure that is wrong, with its correct value");
        }
        return List.of(new Correction.RigCorrected(correction));
    }

    private static Optional<Rig> another(Entries entries, ActionContext context) {
        Optional<String> known = entries.given(KNOWN);
        Optional<Path> file = entries.given(RIG);
        if (known.isEmpty() && file.isEmpty()) {
            return Optional.empty();
        }
        if (known.isPresent() && file.isPresent()) {
            throw new InputRefused("a rig's name and a rig file cannot be combined", "give {known} or {rig}");
        }
        if (FIGURES.stream().anyMatch(argument -> entries.given(argument).isPresent())) {
            throw new InputRefused(
                    "another rig and single figures cannot be combined", "correct them one after the other");
        }
        Rig other = known.map(name -> known(name, context.earlier().rigs()))
                .orElseGet(() -> RigFile.read(file.orElseThrow()));
        return Optional.of(context.earlier()
                .experienced(
                        other.withExperience(Optional.empty()), context.begun().site()));
    }

    private static Rig known(String name, List<Rig> rigs) {
        return rigs.stream()
                .filter(rig -> rig.name().equalsIgnoreCase(name))
                .findFirst()
                .orElseThrow(() -> new InputRefused(
                        "no night in the log had a rig called '" + name + "'",
                        "the rigs are "
                                + String.join(", ", rigs.stream().map(Rig::name).toList())));
    }

    private static RigCorrection figures(Entries entries, Rig before) {
        return new RigCorrection.Figures(
                ScrewArguments.AZIMUTH.correction(entries, before.azimuthScrew()),
                ScrewArguments.ALTITUDE.correction(entries, before.altitudeScrew()),
                entries.given(LEVEL).map(Angle::ofDegrees),
                entries.given(CLAMPING).map(Angle::ofArcminutes),
                optics(entries, before),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private static Optional<List<Optic>> optics(Entries entries, Rig before) {
        boolean isFigureGiven = Stream.of(VIEW, FIELD, DIVISION)
                .anyMatch(argument -> entries.given(argument).isPresent());
        Optional<String> name = entries.given(OPTIC);
        if (name.isEmpty()) {
            if (isFigureGiven) {
                throw new InputRefused("the optic is missing", "give {optic}");
            }
            return Optional.empty();
        }
        Optic entered = before.optic(name.get())
                .orElseThrow(() -> new InputRefused(
                        "the rig has no optic called '" + name.get() + "'",
                        "its optics are "
                                + String.join(
                                        ", ",
                                        before.optics().stream()
                                                .map(Optic::name)
                                                .toList())));
        if (!isFigureGiven) {
            throw new InputRefused(
                    "no correction is given for '" + name.get() + "'", "give {view}, {field} or {division}");
        }
        Optic corrected = new Optic(
                entered.name(),
                entries.given(FIELD).map(Angle::ofDegrees).orElse(entered.field()),
                entries.given(VIEW)
                        .map(view -> new View(view, entered.view().turned()))
                        .orElse(entered.view()),
                entries.given(DIVISION).map(Angle::ofArcseconds).or(entered::division));
        List<Optic> all = new ArrayList<>(before.optics());
        all.set(all.indexOf(entered), corrected);
        return Optional.of(all);
    }
}
