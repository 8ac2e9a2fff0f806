package polewright.alignment.camera;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.mount.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Site;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** Checks of an axis from frames, using the frames alone. */
public final class FrameChecks {
    private static final Angle SMALL_TURN = Angle.ofDegrees(15);
    private static final Duration LONG = Duration.ofHours(2);
    // First offsets reach 15 degrees; twice that is not a plausible set-up.
    private static final Angle FAR_FROM_POLE = Angle.ofDegrees(30);
    // Civil dusk: with the Sun higher the sky is too bright for stars.
    private static final Angle HIGHEST_SUN = Angle.ofDegrees(-6);
    private static final double LIKELY = 0.5;
    private static final double SURE = 0.7;
    // Three that do not close are fitted by some disturbance at any of them.
    private static final int ENOUGH_TO_NAME_ONE = 4;
    private static final double WORTH_NAMING = 0.1;
    private static final int MOST_NAMED = 3;

    private FrameChecks() {}

    /** All findings, the most serious first. */
    public static List<FrameFinding> of(AxisFromFrames axis, Drive told) {
        List<FrameFinding> findings = new ArrayList<>();
        addClockOrSite(findings, axis);
        addDrive(findings, axis, told);
        addRigidity(findings, axis);
        if (axis.largestTurn().compareTo(SMALL_TURN) < 0) {
            findings.add(new FrameFinding.SmallTurn(axis.largestTurn()));
        }
        Duration span = Duration.between(
                axis.frames().get(0).at(),
                axis.frames().get(axis.frames().size() - 1).at());
        if (span.compareTo(LONG) > 0) {
            findings.add(new FrameFinding.FarApartInTime(span));
        }
        return List.copyOf(findings);
    }

    /** The Sun's altitude at the time of a frame, if it was too high for stars to be visible. */
    public static Optional<Angle> sunTooHigh(Site site, CameraAttitude frame) {
        ObservingMoment moment = ObservingMoment.of(site, SkyTime.of(frame.at()), Weather.AIRLESS);
        return Optional.of(SunGuard.at(moment).sun().altitude()).filter(sun -> sun.compareTo(HIGHEST_SUN) > 0);
    }

    private static void addClockOrSite(List<FrameFinding> findings, AxisFromFrames axis) {
        for (int i = 0; i < axis.frames().size(); i++) {
            CameraAttitude frame = axis.frames().get(i);
            int number = i + 1;
            sunTooHigh(axis.site(), frame).ifPresent(sun -> findings.add(new FrameFinding.SunTooHigh(number, sun)));
            Angle altitude = new RefractedDirection(frame.boresight()).altitude();
            if (altitude.radians() < 0) {
                findings.add(new FrameFinding.BelowHorizon(i + 1, altitude));
            }
        }
        Angle distance = axis.axis().separation(AxisPointing.atPole(axis.site()));
        if (distance.compareTo(FAR_FROM_POLE) > 0) {
            findings.add(new FrameFinding.FarFromPole(distance));
        }
    }

    private static void addDrive(List<FrameFinding> findings, AxisFromFrames axis, Drive told) {
        for (InferredDrive.Pair pair : InferredDrive.pairs(axis)) {
            if (pair.drive().isEmpty()) {
                findings.add(
                        new FrameFinding.NeitherTracksNorStands(pair.after(), pair.turnedWest(), pair.skyTurned()));
            }
        }
        InferredDrive found = InferredDrive.of(axis, told);
        if (found.seen() && told != Drive.NOT_TOLD && told != found.drive()) {
            findings.add(new FrameFinding.DriveNotAsTold(told, found.drive()));
        }
    }

    private static void addRigidity(List<FrameFinding> findings, AxisFromFrames axis) {
        if (axis.degreesOfFreedom() == 0) {
            findings.add(new FrameFinding.Unchecked());
        }
        axis.explanations().ifPresent(explanations -> findings.add(disagreement(axis, explanations)));
    }

    private static FrameFinding disagreement(AxisFromFrames axis, FrameExplanations explanations) {
        List<Vector2D> residuals = axis.fit().residuals();
        int worst = 0;
        for (int i = 1; i < residuals.size(); i++) {
            worst = residuals.get(i).getNorm() > residuals.get(worst).getNorm() ? i : worst;
        }
        Angle farthest = Angle.ofArcseconds(residuals.get(worst).getNorm());
        if (explanations.probabilityOfFlexureOnly() > LIKELY) {
            return new FrameFinding.NotRigid(farthest, worst + 1, Math.sqrt(axis.reducedChiSquared()));
        }
        int frames = axis.frames().size();
        Optional<FrameExplanations.Suspect> suspect =
                frames < ENOUGH_TO_NAME_ONE ? Optional.empty() : explanations.suspect(SURE);
        return suspect.<FrameFinding>map(s -> new FrameFinding.Disturbed(s, worthNaming(explanations.causes(s))))
                .orElseGet(() ->
                        new FrameFinding.DoesNotClose(frames, farthest, worthNaming(explanations.explanations())));
    }

    private static List<FrameExplanations.Explanation> worthNaming(List<FrameExplanations.Explanation> likeliestFirst) {
        double all = likeliestFirst.stream()
                .mapToDouble(FrameExplanations.Explanation::probability)
                .sum();
        return likeliestFirst.stream()
                .filter(e -> e.probability() >= WORTH_NAMING * all)
                .limit(MOST_NAMED)
                .toList();
    }
}
