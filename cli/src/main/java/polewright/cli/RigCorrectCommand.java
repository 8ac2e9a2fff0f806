package polewright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import polewright.mount.rig.Optic;
import polewright.mount.rig.Orientation;
import polewright.mount.rig.Rig;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.ScrewSense;
import polewright.mount.rig.View;
import polewright.operations.Workbench;
import polewright.operations.action.ActionContext;
import polewright.operations.seasons.LoggedRigs;
import polewright.session.event.Correction;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.store.NightLog;

@Command(
        name = "correct",
        description = {
            "Correct tonight's rig: all of it, or single figures.",
            "The whole night is recomputed; nothing that was logged is lost."
        },
        footer = {
            "",
            "For example:",
            "  polewright rig correct --azimuth-clockwise left",
            "  polewright rig correct --altitude-gain 0.75 --altitude-play 0.3",
            "  polewright rig correct --optic finder --view erect",
            "  polewright rig correct --rig rig.json"
        })
final class RigCorrectCommand extends AppendingCommand {
    @Mixin
    private RigOption rig;

    @Option(names = "--known", paramLabel = "NAME", description = "Use the rig of this name from an earlier night.")
    private @Nullable String known;

    @Mixin
    private AzimuthOptions azimuth;

    @Mixin
    private AltitudeOptions altitude;

    @Option(names = "--level", paramLabel = "DEG", description = "Tilt of the base, 1 sigma.")
    private @Nullable Double levelDeg;

    @Option(
            names = "--clamping",
            paramLabel = "ARCMIN",
            description = "Shift of the axis on clamping, 1 sigma in each direction.")
    private @Nullable Double clampArcmin;

    @Option(
            names = "--optic",
            paramLabel = "NAME",
            description = "The finder or eyepiece to correct with the next three options.")
    private @Nullable String optic;

    @Option(
            names = "--view",
            paramLabel = "VIEW",
            description = "Its view: erect, inverted (upside down), or mirrored (star diagonal).")
    private @Nullable Orientation view;

    @Option(names = "--field", paramLabel = "DEG", description = "Its true field, edge to edge.")
    private @Nullable Double fieldDeg;

    @Option(names = "--division", paramLabel = "ARCSEC", description = "Size of one reticle division.")
    private @Nullable Double divisionArcsec;

    RigCorrectCommand(Workbench workbench) {
        super(workbench, "rig corrected");
    }

    @Override
    List<NightEvent> events(ActionContext context) {
        NightEvent.Begun begun = context.begun();
        Optional<Rig> another = another(bench(), begun);
        RigCorrection correction =
                another.<RigCorrection>map(RigCorrection.AnotherRig::new).orElseGet(() -> figures(begun.rig()));
        if (correction.appliedTo(begun.rig()).equals(begun.rig())) {
            throw new InputRefused(
                    "the rig already has these values", "give the figure that is wrong, with its correct value");
        }
        return List.of(new Correction.RigCorrected(correction));
    }

    private Optional<Rig> another(Workbench bench, NightEvent.Begun begun) {
        if (known == null && !rig.isGiven()) {
            return Optional.empty();
        }
        if (known != null && rig.isGiven()) {
            throw new WrongUsage("a rig's name and a rig file cannot be combined. Give --known or --rig.");
        }
        if (isAnyFigureGiven()) {
            throw new WrongUsage(
                    "another rig and single figures cannot be combined. Correct them one after the other.");
        }
        try (NightLog opened = log().open(bench)) {
            Rig other = known == null
                    ? rig.rig(Optional.empty())
                    : LoggedRigs.of(opened).stream()
                            .filter(one -> one.name().equalsIgnoreCase(known))
                            .findFirst()
                            .orElseThrow(() -> new InputRefused(
                                    "no night in the log had a rig called '" + known + "'", knownNames(opened)));
            return Optional.of(EarlierNights.withEarlierExperience(
                    LogOption.latest(opened), other.withExperience(Optional.empty()), begun.site(), opened));
        }
    }

    private static String knownNames(NightLog opened) {
        return "the rigs are "
                + String.join(
                        ", ", LoggedRigs.of(opened).stream().map(Rig::name).toList());
    }

    private boolean isAnyFigureGiven() {
        return azimuth.isAnyGiven()
                || altitude.isAnyGiven()
                || levelDeg != null
                || clampArcmin != null
                || optic != null
                || isOpticFigureGiven();
    }

    private boolean isOpticFigureGiven() {
        return view != null || fieldDeg != null || divisionArcsec != null;
    }

    private RigCorrection figures(Rig before) {
        return new RigCorrection.Figures(
                azimuth.correction(before.azimuthScrew()),
                altitude.correction(before.altitudeScrew()),
                Optional.ofNullable(levelDeg).map(Angle::ofDegrees),
                Optional.ofNullable(clampArcmin).map(Angle::ofArcminutes),
                optics(before),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private Optional<List<Optic>> optics(Rig before) {
        if (optic == null) {
            if (isOpticFigureGiven()) {
                throw new WrongUsage("the optic is missing. Add --optic NAME.");
            }
            return Optional.empty();
        }
        Optic entered = before.optic(optic)
                .orElseThrow(() -> new InputRefused(
                        "the rig has no optic called '" + optic + "'",
                        "its optics are "
                                + String.join(
                                        ", ",
                                        before.optics().stream()
                                                .map(Optic::name)
                                                .toList())));
        if (!isOpticFigureGiven()) {
            throw new WrongUsage("no correction is given for '" + optic + "'. Add --view, --field or --division.");
        }
        Optic corrected = new Optic(
                entered.name(),
                fieldDeg == null ? entered.field() : Angle.ofDegrees(fieldDeg),
                view == null ? entered.view() : new View(view, entered.view().turned()),
                divisionArcsec == null ? entered.division() : Optional.of(Angle.ofArcseconds(divisionArcsec)));
        List<Optic> all = new ArrayList<>(before.optics());
        all.set(all.indexOf(entered), corrected);
        return Optional.of(all);
    }

    /** The azimuth screw. */
    static final class AzimuthOptions extends ScrewOptions {
        @Option(
                names = "--azimuth-clockwise",
                paramLabel = "SIDE",
                description = "Where a clockwise turn of the azimuth screw moves the axis: right or left.")
        private @Nullable ScrewSense clockwise;

        @Option(names = "--azimuth-reversed", description = "The screw works the opposite way from what is entered.")
        private boolean isReversed;

        @Option(
                names = "--azimuth-gain",
                paramLabel = "FACTOR",
                description = "Factor on the movement per turn: 0.5 is half as far as entered.")
        private @Nullable Double gain;

        @Option(
                names = "--azimuth-per-turn",
                paramLabel = "DEG",
                description = "Movement of the axis in azimuth per turn.")
        private @Nullable Double perTurnDeg;

        @Option(names = "--azimuth-play", paramLabel = "TURNS", description = "Its backlash.")
        private @Nullable Double play;

        @Override
        Given given() {
            return new Given("azimuth", clockwise, isReversed, gain, perTurnDeg, play);
        }
    }

    /** The altitude screw. */
    static final class AltitudeOptions extends ScrewOptions {
        @Option(
                names = "--altitude-clockwise",
                paramLabel = "WAY",
                description = "What a clockwise turn of the altitude screw does to the axis: raises or lowers.")
        private @Nullable ScrewSense clockwise;

        @Option(names = "--altitude-reversed", description = "The screw works the opposite way from what is entered.")
        private boolean isReversed;

        @Option(
                names = "--altitude-gain",
                paramLabel = "FACTOR",
                description = "Factor on the movement per turn: 0.5 is half as far as entered.")
        private @Nullable Double gain;

        @Option(
                names = "--altitude-per-turn",
                paramLabel = "DEG",
                description = "Movement of the axis in altitude per turn.")
        private @Nullable Double perTurnDeg;

        @Option(names = "--altitude-play", paramLabel = "TURNS", description = "Its backlash.")
        private @Nullable Double play;

        @Override
        Given given() {
            return new Given("altitude", clockwise, isReversed, gain, perTurnDeg, play);
        }
    }
}
