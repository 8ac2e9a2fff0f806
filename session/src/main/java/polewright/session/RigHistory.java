package polewright.session;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.exception.MathRuntimeException;
import polewright.alignment.fix.FixSolver;
import polewright.alignment.fix.MountCalibration;
import polewright.alignment.fix.NightAsEntered;
import polewright.alignment.fix.ScrewSenses;
import polewright.mount.AxisOffset;
import polewright.mount.rig.Experience;
import polewright.mount.rig.Rig;
import polewright.mount.rig.Screw;
import polewright.session.event.LoggedEvent;
import polewright.session.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.place.Site;

/**
 * What earlier nights have shown about a rig: the direction and gain of its screws, and the usual shift from clamping.
 *
 * <p>Each night is evaluated on its own, with the rig as its owner entered it, so that nothing is counted twice; then
 * the results are combined, allowing for scatter between nights ({@link FigureAcrossNights}). Clamps push to the right
 * or left when facing the elevated pole: that is east or west depending on the hemisphere, and a rig may have been used
 * in both. The tilt of the base belongs to one setting-down and is not carried over. A night in doubt, or without a
 * solution, contributes nothing.
 *
 * <p>Earlier nights determine a screw's direction only if its owner has not given it. The odds of all nights are
 * multiplied, the latest last, and are capped at 200 to 1: a mount may be taken apart between two nights, and then a
 * night or two must be enough to show it.
 */
public final class RigHistory {
    // Variation of a screw's gain from night to night: the wedge is set at another point of its thread or arm (common
    // practice; a fiftieth is felt as "the same as last time").
    private static final double SCREW_SCATTER = 0.02;
    // Prior for the shift from clamping: half of its variance constant, half new each time. A half-Cauchy distribution
    // cut off at ten scales has a root mean square of 2.4 scales.
    private static final double CLAMP_HABIT = Math.sqrt(0.5);
    private static final double CLAMP_SCATTER = Math.sqrt(0.5) / 2.4;

    private final Rig rig;
    private final List<NightAsEntered> azimuth = new ArrayList<>();
    private final List<NightAsEntered> altitude = new ArrayList<>();
    // As seen facing the elevated pole.
    private final List<NightAsEntered> clampRight = new ArrayList<>();
    private final List<NightAsEntered> clampUp = new ArrayList<>();
    // Natural logarithms of the odds that a screw goes as entered.
    private double azimuthSense;
    private double altitudeSense;
    private int nights;
    private int clampings;

    private RigHistory(Rig rig) {
        this.rig = rig;
    }

    /**
     * The rig as shown by these nights, with assumed directions replaced by the likelier ones. The rig unchanged, if no
     * night with the same name and screws has shown anything.
     *
     * @param earlierNights the events of each, in any order; nights of other rigs may be among them
     * @param tonight the rig's site now: its hemisphere determines which direction of the clamps' shift is east
     */
    public static Rig withExperience(List<List<LoggedEvent>> earlierNights, Rig rig, Site tonight) {
        return experience(earlierNights, rig, tonight)
                .map(learned -> withLikelierSenses(rig, learned))
                .orElse(rig);
    }

    /** What these nights have shown about the rig, if anything. */
    private static Optional<Experience> experience(List<List<LoggedEvent>> earlierNights, Rig rig, Site tonight) {
        RigHistory history = new RigHistory(rig);
        earlierNights.stream()
                .filter(night -> !night.isEmpty())
                .sorted(Comparator.comparing(night -> night.get(0).at()))
                .forEach(history::evaluate);
        return history.experience(tonight.hemisphereSign());
    }

    private static Rig withLikelierSenses(Rig rig, Experience learned) {
        boolean isAzimuthOtherwise = rig.azimuthScrew().isSenseAssumed() && learned.azimuthSense() < 0.5;
        boolean isAltitudeOtherwise = rig.altitudeScrew().isSenseAssumed() && learned.altitudeSense() < 0.5;
        return rig.withScrews(
                        isAzimuthOtherwise ? rig.azimuthScrew().reversed() : rig.azimuthScrew(),
                        isAltitudeOtherwise ? rig.altitudeScrew().reversed() : rig.altitudeScrew(),
                        rig.levelSigma())
                .withExperience(Optional.of(learned.withSenses(
                        isAzimuthOtherwise ? 1 - learned.azimuthSense() : learned.azimuthSense(),
                        isAltitudeOtherwise ? 1 - learned.altitudeSense() : learned.altitudeSense())));
    }

    private void evaluate(List<LoggedEvent> events) {
        try {
            List<LoggedEvent> standing = StandingEvents.among(events).asMeant();
            if (!standing.isEmpty()
                    && standing.get(0).event() instanceof NightEvent.Begun begun
                    && isSameMount(begun.rig())
                    && standing.stream().anyMatch(RigHistory::isInformative)) {
                learn(standing, withoutExperience(begun));
            }
        } catch (InputRefused | MathRuntimeException unusable) {
            // An error in an old night must not prevent beginning a new one.
        }
    }

    private void learn(List<LoggedEvent> standing, NightEvent.Begun begun) {
        FixSolver.calibration(begun.site(), begun.rig(), begun.weather(), NightSteps.of(standing, begun))
                .ifPresent(calibration ->
                        learn(calibration, clampings(standing), begun.site().hemisphereSign()));
    }

    private void learn(MountCalibration night, Set<Long> clamped, int rightIsEast) {
        Rig shown = night.rig();
        if (contradictsOwner(shown.azimuthScrew(), rig.azimuthScrew())
                || contradictsOwner(shown.altitudeScrew(), rig.altitudeScrew())) {
            return;
        }
        if (night.azimuthFactor().isPresent() || night.altitudeFactor().isPresent()) {
            nights++;
        }
        azimuthSense = added(
                azimuthSense,
                shown.azimuthScrew(),
                rig.azimuthScrew(),
                night.senses().azimuth());
        altitudeSense = added(
                altitudeSense,
                shown.altitudeScrew(),
                rig.altitudeScrew(),
                night.senses().altitude());
        night.azimuthFactor().ifPresent(azimuth::add);
        night.altitudeFactor().ifPresent(altitude::add);
        for (MountCalibration.Shift shift : night.shifts()) {
            if (clamped.contains(shift.seq())
                    && (shift.eastArcmin().isPresent() || shift.upArcmin().isPresent())) {
                clampings++;
                shift.eastArcmin()
                        .map(east -> new NightAsEntered(rightIsEast * east.value(), east.variance()))
                        .ifPresent(clampRight::add);
                shift.upArcmin().ifPresent(clampUp::add);
            }
        }
    }

    /** Whether a night has shown a screw to go against the direction now given by its owner. */
    private static boolean contradictsOwner(Screw shown, Screw now) {
        return !now.isSenseAssumed() && shown.clockwise() != now.clockwise();
    }

    private static double added(double before, Screw shown, Screw now, double sense) {
        if (!now.isSenseAssumed()) {
            return before;
        }
        double logOdds = ScrewSenses.logOdds(sense);
        return ScrewSenses.bounded(before + (shown.clockwise() == now.clockwise() ? logOdds : -logOdds));
    }

    /**
     * The combined result of all nights.
     *
     * @param rightIsEast +1 if right is east when facing the elevated pole, −1 if it is west
     */
    private Optional<Experience> experience(int rightIsEast) {
        if (nights == 0 && clampings == 0 && azimuthSense == 0 && altitudeSense == 0) {
            return Optional.empty();
        }
        FigureAcrossNights azimuthFactor = factor(azimuth, rig.azimuthScrew());
        FigureAcrossNights altitudeFactor = factor(altitude, rig.altitudeScrew());
        FigureAcrossNights right = clamp(clampRight);
        FigureAcrossNights up = clamp(clampUp);
        return Optional.of(new Experience(
                nights,
                azimuthFactor.mean(),
                azimuthFactor.sigma(),
                altitudeFactor.mean(),
                altitudeFactor.sigma(),
                clampings,
                AxisOffset.ofArcminutes(rightIsEast * right.mean(), up.mean()),
                Angle.ofArcminutes(Math.sqrt((right.sigma() * right.sigma() + up.sigma() * up.sigma()) / 2)),
                ScrewSenses.ofLogOdds(azimuthSense),
                ScrewSenses.ofLogOdds(altitudeSense)));
    }

    private static FigureAcrossNights factor(List<NightAsEntered> results, Screw screw) {
        return results.isEmpty()
                ? new FigureAcrossNights(1, screw.relativeGainSigma())
                : FigureAcrossNights.of(results, 1, screw.relativeGainSigma(), SCREW_SCATTER);
    }

    private FigureAcrossNights clamp(List<NightAsEntered> results) {
        double sigma = rig.clampSigma().arcminutes();
        return results.isEmpty()
                ? new FigureAcrossNights(0, sigma)
                : FigureAcrossNights.of(results, 0, CLAMP_HABIT * sigma, CLAMP_SCATTER * sigma);
    }

    private boolean isSameMount(Rig other) {
        return other.name().equals(rig.name())
                && isSameScrew(other.azimuthScrew(), rig.azimuthScrew())
                && isSameScrew(other.altitudeScrew(), rig.altitudeScrew());
    }

    private static boolean isSameScrew(Screw one, Screw other) {
        return one.geometry().equals(other.geometry())
                && (one.clockwise() == other.clockwise() || one.isSenseAssumed() || other.isSenseAssumed());
    }

    private static boolean isInformative(LoggedEvent logged) {
        return logged.event() instanceof NightEvent.ScrewsTurned || logged.event() instanceof NightEvent.Clamped;
    }

    private static Set<Long> clampings(List<LoggedEvent> standing) {
        return standing.stream()
                .filter(logged -> logged.event() instanceof NightEvent.Clamped)
                .map(LoggedEvent::seq)
                .collect(Collectors.toSet());
    }

    private static NightEvent.Begun withoutExperience(NightEvent.Begun begun) {
        return new NightEvent.Begun(
                begun.siteName(),
                begun.site(),
                begun.weather(),
                begun.rig().withExperience(Optional.empty()),
                begun.allowance());
    }
}
