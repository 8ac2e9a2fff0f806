package polewright.night;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.hipparchus.exception.MathRuntimeException;
import polewright.axis.AxisOffset;
import polewright.axis.fix.FixSolver;
import polewright.axis.fix.Hindsight;
import polewright.axis.fix.Told;
import polewright.axis.rig.Experience;
import polewright.axis.rig.Rig;
import polewright.axis.rig.Screw;
import polewright.night.event.LoggedEvent;
import polewright.night.event.NightEvent;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;

/**
 * What earlier nights of a rig have taught: how far its screws really go, and how its clamps usually move the axis.
 *
 * <p>Each night is looked back on by itself, by the rig as its owner wrote it, so that nothing is counted twice; then what
 * they tell is put together, with the scatter between them ({@link FigureOverNights}). The lean of the base is of one
 * setting-down and is not carried over. A night that is in doubt, or that cannot be solved at all, teaches nothing.
 */
public final class RigHistory {
    // How much a screw's effect changes from night to night: the wedge is set at another place of its thread or arm
    // (common practice; a fiftieth is felt as "the same as last time").
    private static final double SCREW_SCATTER = 0.02;
    // A clamp's shift before any was seen: half of its variance the same every time, half new each time.
    // A half-Cauchy cut at ten scales has a root mean square of 2.4 of them.
    private static final double CLAMP_HABIT = Math.sqrt(0.5);
    private static final double CLAMP_SCATTER = Math.sqrt(0.5) / 2.4;

    private final Rig rig;
    private final List<Told> azimuth = new ArrayList<>();
    private final List<Told> altitude = new ArrayList<>();
    private final List<Told> clampEast = new ArrayList<>();
    private final List<Told> clampUp = new ArrayList<>();
    private int nights;
    private int clampings;

    private RigHistory(Rig rig) {
        this.rig = rig;
    }

    /**
     * What these nights taught of the rig; nothing if no night with the same name, screws and senses tells of it.
     *
     * @param earlierNights the events of each, in any order; other rigs' nights may be among them
     */
    public static Optional<Experience> experience(List<List<LoggedEvent>> earlierNights, Rig rig) {
        RigHistory history = new RigHistory(rig);
        earlierNights.forEach(history::lookBackOn);
        return history.experience();
    }

    private void lookBackOn(List<LoggedEvent> events) {
        try {
            List<LoggedEvent> standing = StandingEvents.among(events).asMeant();
            if (!standing.isEmpty()
                    && standing.get(0).event() instanceof NightEvent.Begun begun
                    && isSameMount(begun.rig())
                    && standing.stream().anyMatch(RigHistory::mayTeach)) {
                learn(standing, withoutExperience(begun));
            }
        } catch (InputRefused | MathRuntimeException unusable) {
            // An old night with something wrong in it must not keep anyone from beginning a new one.
        }
    }

    private void learn(List<LoggedEvent> standing, NightEvent.Begun begun) {
        FixSolver.hindsight(begun.site(), begun.rig(), begun.weather(), NightSteps.of(standing, begun))
                .ifPresent(hindsight -> learn(hindsight, clampings(standing)));
    }

    private void learn(Hindsight night, Set<Long> clamped) {
        if (night.azimuthFactor().isPresent() || night.altitudeFactor().isPresent()) {
            nights++;
        }
        night.azimuthFactor().ifPresent(azimuth::add);
        night.altitudeFactor().ifPresent(altitude::add);
        for (Hindsight.Shift shift : night.shifts()) {
            if (clamped.contains(shift.seq())
                    && (shift.eastArcmin().isPresent() || shift.upArcmin().isPresent())) {
                clampings++;
                shift.eastArcmin().ifPresent(clampEast::add);
                shift.upArcmin().ifPresent(clampUp::add);
            }
        }
    }

    private Optional<Experience> experience() {
        if (nights == 0 && clampings == 0) {
            return Optional.empty();
        }
        FigureOverNights azimuthFactor = factor(azimuth, rig.azimuthScrew());
        FigureOverNights altitudeFactor = factor(altitude, rig.altitudeScrew());
        FigureOverNights east = clamp(clampEast);
        FigureOverNights up = clamp(clampUp);
        return Optional.of(new Experience(
                nights,
                azimuthFactor.mean(),
                azimuthFactor.sigma(),
                altitudeFactor.mean(),
                altitudeFactor.sigma(),
                clampings,
                AxisOffset.ofArcminutes(east.mean(), up.mean()),
                Angle.ofArcminutes(Math.sqrt((east.sigma() * east.sigma() + up.sigma() * up.sigma()) / 2))));
    }

    private static FigureOverNights factor(List<Told> told, Screw screw) {
        return told.isEmpty()
                ? new FigureOverNights(1, screw.relativeGainSigma())
                : FigureOverNights.of(told, 1, screw.relativeGainSigma(), SCREW_SCATTER);
    }

    private FigureOverNights clamp(List<Told> told) {
        double sigma = rig.clampSigma().arcminutes();
        return told.isEmpty()
                ? new FigureOverNights(0, sigma)
                : FigureOverNights.of(told, 0, CLAMP_HABIT * sigma, CLAMP_SCATTER * sigma);
    }

    private boolean isSameMount(Rig other) {
        return other.name().equals(rig.name())
                && isSameScrew(other.azimuthScrew(), rig.azimuthScrew())
                && isSameScrew(other.altitudeScrew(), rig.altitudeScrew());
    }

    private static boolean isSameScrew(Screw one, Screw other) {
        return one.geometry().equals(other.geometry()) && one.clockwise() == other.clockwise();
    }

    private static boolean mayTeach(LoggedEvent logged) {
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
