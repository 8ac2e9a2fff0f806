package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import polewright.mount.rig.FinishSense;
import polewright.mount.rig.Optic;
import polewright.mount.rig.RigCorrection;
import polewright.mount.rig.ScrewCorrection;
import polewright.mount.rig.ScrewGeometry;
import polewright.mount.rig.ScrewSense;
import polewright.sky.PlainNumber;

/** Corrections of the rig in one line; and the geometry of a screw. */
public final class CorrectionWords {
    private CorrectionWords() {}

    static String of(RigCorrection correction) {
        if (correction instanceof RigCorrection.AnotherRig another) {
            return "rig corrected: it is " + another.rig().name();
        } else if (correction instanceof RigCorrection.Figures figures) {
            return "rig corrected: " + String.join("; ", figures(figures));
        }
        throw new IllegalStateException("no words for " + correction.getClass());
    }

    private static List<String> figures(RigCorrection.Figures figures) {
        List<String> words = new ArrayList<>();
        addScrew(words, "azimuth screw", figures.azimuthScrew());
        addScrew(words, "altitude screw", figures.altitudeScrew());
        figures.levelSigma()
                .ifPresent(level -> words.add("base level to " + PlainNumber.asRead(level.degrees()) + "°"));
        figures.clampSigma()
                .ifPresent(
                        clamp -> words.add("clamping moves the axis " + PlainNumber.asRead(clamp.arcminutes()) + "′"));
        figures.optics()
                .ifPresent(optics -> words.add("optics "
                        + String.join(
                                ", ",
                                optics.stream().map(CorrectionWords::optic).toList())));
        figures.cameras()
                .ifPresent(cameras -> words.add(
                        cameras.isEmpty()
                                ? "no camera"
                                : "cameras "
                                        + String.join(
                                                ", ",
                                                cameras.stream()
                                                        .map(camera -> camera.name())
                                                        .toList())));
        figures.screwOrder().ifPresent(order -> words.add(lower(order).replace('_', ' ')));
        figures.drive().ifPresent(drive -> words.add("drive at " + lower(drive.rate()) + " rate"));
        figures.travel().ifPresent(travel -> words.add("limits of the RA travel"));
        return words;
    }

    private static String optic(Optic optic) {
        return optic.name() + " (" + PlainNumber.asRead(optic.field().degrees()) + "°, "
                + lower(optic.view().orientation())
                + optic.division()
                        .map(one -> ", divisions of " + PlainNumber.asRead(one.arcseconds()) + "″")
                        .orElse("") + ")";
    }

    private static void addScrew(List<String> words, String name, ScrewCorrection screw) {
        List<String> figures = new ArrayList<>();
        screw.clockwise().ifPresent(sense -> figures.add(clockwise(sense)));
        screw.geometry().ifPresent(geometry -> figures.add(of(geometry)));
        screw.relativeGainSigma().ifPresent(gain -> figures.add("known to " + PlainNumber.asRead(100 * gain) + " %"));
        screw.handSigmaTurns().ifPresent(hand -> figures.add("turned to " + PlainNumber.asRead(hand) + " of a turn"));
        screw.backlashTurns().ifPresent(play -> figures.add("backlash of " + PlainNumber.asRead(play) + " turns"));
        screw.finish().ifPresent(finish -> figures.add(finish(finish)));
        if (!figures.isEmpty()) {
            words.add(name + " " + String.join(", ", figures));
        }
    }

    /** The direction in which a clockwise turn moves the axis. */
    public static String clockwise(ScrewSense sense) {
        return switch (sense) {
            case RIGHT -> "clockwise moves the axis right";
            case LEFT -> "clockwise moves the axis left";
            case RAISES -> "clockwise raises the axis";
            case LOWERS -> "clockwise lowers the axis";
        };
    }

    /** The effect of one turn. */
    public static String of(ScrewGeometry geometry) {
        return geometry.accept(new OneTurn());
    }

    private static String finish(FinishSense finish) {
        return switch (finish) {
            case EITHER -> "ends either way";
            case CLOCKWISE -> "ends clockwise";
            case COUNTER_CLOCKWISE -> "ends counter-clockwise";
        };
    }

    private static String mm(double millimetres) {
        return PlainNumber.asRead(millimetres) + " mm";
    }

    private static String lower(Enum<?> value) {
        return value.name().toLowerCase(Locale.ROOT);
    }

    private static final class OneTurn implements ScrewGeometry.Visitor<String> {
        @Override
        public String degreesPerTurn(ScrewGeometry.DegreesPerTurn turn) {
            return PlainNumber.asRead(turn.perTurn().degrees()) + "° a turn";
        }

        @Override
        public String pushScrew(ScrewGeometry.PushScrew push) {
            return "pitch " + mm(push.threadPitchMm()) + ", arm " + mm(push.armMm());
        }

        @Override
        public String turnbuckle(ScrewGeometry.Turnbuckle turnbuckle) {
            return "turnbuckle, " + mm(turnbuckle.leadPerTurnMm()) + " a turn";
        }
    }
}
