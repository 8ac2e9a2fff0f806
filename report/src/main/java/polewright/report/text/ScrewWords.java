package polewright.report.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import polewright.alignment.advice.Advice;
import polewright.alignment.fix.AxisState;
import polewright.alignment.fix.ScrewFinding;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.session.NightState;
import polewright.sky.angle.Angle;

/** What was learned about the mount, tonight and on earlier nights, in words. */
public final class ScrewWords {
    private static final double WORTH_TELLING_GAIN = 0.03;
    private static final double WORTH_TELLING_SENSE = 0.9;
    private static final Angle WORTH_TELLING_SHIFT = Angle.ofArcminutes(0.3);

    private ScrewWords() {}

    /** One line while the direction of a screw to be turned is unknown; otherwise none. */
    static Optional<String> test(Advice.TurnScrews advice) {
        return switch (advice.tests().size()) {
            case 0 -> Optional.empty();
            case 1 ->
                Optional.of("Test turn: the direction of this screw is not yet known. The next sighting will show it.");
            default ->
                Optional.of("Test turns: the screw directions are not yet known. The next sighting will show them.");
        };
    }

    /** Which screws' directions are assumed, next to their figures; none if the user gave them all. */
    public static Optional<String> assumed(Rig rig) {
        ScrewSenses senses = ScrewSenses.before(rig);
        boolean azimuth = rig.azimuthScrew().isSenseAssumed();
        boolean altitude = rig.altitudeScrew().isSenseAssumed();
        if (!azimuth && !altitude) {
            return Optional.empty();
        }
        if (azimuth && altitude && senses.isAzimuthKnown() == senses.isAltitudeKnown()) {
            return Optional.of("Both screw directions are assumed"
                    + (senses.isAzimuthKnown()
                            ? "; earlier nights confirmed them."
                            : " until the first turn of each has been checked."));
        }
        List<String> lines = new ArrayList<>();
        if (azimuth) {
            lines.add(assumed("azimuth", senses.isAzimuthKnown()));
        }
        if (altitude) {
            lines.add(assumed("altitude", senses.isAltitudeKnown()));
        }
        return Optional.of(String.join(" ", lines));
    }

    private static String assumed(String screw, boolean isShown) {
        return "The direction of the " + screw + " screw is assumed"
                + (isShown ? "; earlier nights confirmed it." : " until its first turn has been checked.");
    }

    /**
     * One line for each screw that goes the opposite way to the rig's description, once the night has shown it,
     * certainly or probably.
     */
    public static List<String> otherWay(NightState night) {
        Rig told = night.begun().rig();
        Rig learned = night.fix().rig();
        List<String> lines = new ArrayList<>();
        ScrewSenses senses = night.fix().senses();
        if (told.azimuthScrew().clockwise() != learned.azimuthScrew().clockwise()) {
            otherWay("azimuth", learned.azimuthScrew(), senses.azimuth()).ifPresent(lines::add);
        }
        if (told.altitudeScrew().clockwise() != learned.altitudeScrew().clockwise()) {
            otherWay("altitude", learned.altitudeScrew(), senses.altitude()).ifPresent(lines::add);
        }
        return lines;
    }

    private static Optional<String> otherWay(String screw, Screw learned, double probability) {
        if (probability >= ScrewSenses.KNOWN) {
            return Optional.of(otherWay(screw, learned));
        }
        return probability >= WORTH_TELLING_SENSE
                ? Optional.of("The " + screw + " screw probably works the opposite way from the one "
                        + (learned.isSenseAssumed() ? "assumed" : "in the rig file") + ": clockwise "
                        + way(learned) + " (" + AdviceWords.percent(probability) + ").")
                : Optional.empty();
    }

    private static String way(Screw screw) {
        return switch (screw.clockwise()) {
            case RIGHT -> "moves the axis right";
            case LEFT -> "moves the axis left";
            case RAISES -> "raises the axis";
            case LOWERS -> "lowers the axis";
        };
    }

    private static String otherWay(String screw, Screw learned) {
        String way = way(learned);
        return learned.isSenseAssumed()
                ? "The " + screw + " screw works the opposite way from the one assumed: clockwise " + way
                        + ". The advice allows for it, tonight and on later nights."
                : "The " + screw + " screw works the opposite way from the one in the rig file: clockwise " + way
                        + ". The advice allows for it tonight; correct the rig for later nights.";
    }

    /** One line for each finding from tonight's turns. */
    public static List<String> findings(AxisState state) {
        return ScrewFinding.of(state).stream().map(ScrewWords::finding).toList();
    }

    /** One line on the experience from earlier nights, if any of it matters. */
    public static Optional<String> learned(Rig rig) {
        return rig.experience().flatMap(experience -> learned(rig, experience));
    }

    private static Optional<String> learned(Rig rig, Experience experience) {
        List<String> parts = new ArrayList<>();
        ScrewSenses senses = ScrewSenses.before(rig);
        if (rig.azimuthScrew().isSenseAssumed() && senses.isAzimuthKnown()) {
            parts.add("turning the azimuth screw clockwise " + way(rig.azimuthScrew()));
        }
        if (rig.altitudeScrew().isSenseAssumed() && senses.isAltitudeKnown()) {
            parts.add("turning the altitude screw clockwise " + way(rig.altitudeScrew()));
        }
        addGain(parts, "azimuth", experience.azimuthFactor(), experience.azimuthSigma());
        addGain(parts, "altitude", experience.altitudeFactor(), experience.altitudeSigma());
        clamping(experience).ifPresent(parts::add);
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        String nights = experience.nights() <= 1 ? "an earlier night" : experience.nights() + " earlier nights";
        return Optional.of("From " + nights + ": " + String.join("; ", parts) + ".");
    }

    /** {@code clamping usually lowers this axis 2′}, if it goes that way five times in six. */
    public static Optional<String> clamping(Experience experience) {
        AxisOffset shift = experience.clampShift();
        List<String> ways = new ArrayList<>();
        if (isUsual(shift.up(), experience)) {
            ways.add((shift.up().radians() > 0 ? "raises" : "lowers") + " this axis " + AngleWords.size(shift.up()));
        }
        if (isUsual(shift.east(), experience)) {
            ways.add((ways.isEmpty() ? "moves this axis " : "moves it ")
                    + AngleWords.size(shift.east())
                    + (shift.east().radians() > 0 ? " east" : " west"));
        }
        return ways.isEmpty() ? Optional.empty() : Optional.of("clamping usually " + String.join(" and ", ways));
    }

    private static boolean isUsual(Angle shift, Experience experience) {
        return experience.clampings() > 0
                && shift.abs().compareTo(WORTH_TELLING_SHIFT) > 0
                && shift.abs().compareTo(experience.clampSigma()) > 0;
    }

    private static void addGain(List<String> parts, String screw, double factor, double sigma) {
        double more = factor - 1;
        if (Math.abs(more) > Math.max(WORTH_TELLING_GAIN, sigma)) {
            parts.add(String.format(
                    Locale.ROOT,
                    "the %s screw moves %.0f %% %s than the rig file says",
                    screw,
                    100 * Math.abs(more),
                    more > 0 ? "more" : "less"));
        }
    }

    private static String finding(ScrewFinding finding) {
        if (finding instanceof ScrewFinding.LeaningBase leaning) {
            return "The base leans about " + degrees(leaning.toTheRight()) + " to the " + side(leaning.toTheRight())
                    + " as you face the pole, so each screw also moves the axis a little in the other direction. The"
                    + " advice allows for it.";
        } else if (finding instanceof ScrewFinding.CrookedHinge crooked) {
            return "The altitude hinge is about " + degrees(crooked.toTheRight())
                    + " out of square, so raising the axis also moves it to the " + side(crooked.toTheRight())
                    + ". The advice allows for it.";
        }
        throw new IllegalStateException("no words for " + finding);
    }

    private static String degrees(Angle angle) {
        return String.format(Locale.ROOT, "%.1f°", Math.abs(angle.degrees()));
    }

    private static String side(Angle toTheRight) {
        return toTheRight.radians() > 0 ? "right" : "left";
    }
}
