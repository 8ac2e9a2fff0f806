package polewright.axis.camera;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.geometry.euclidean.twod.Vector2D;
import polewright.axis.AxisPointing;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.body.SunGuard;
import polewright.sky.place.ObservingMoment;
import polewright.sky.place.RefractedDirection;
import polewright.sky.place.Weather;
import polewright.sky.time.SkyTime;

/** What looks wrong in an axis from frames, by the frames alone. */
public final class FrameChecks {
    private static final Angle SMALL_TURN = Angle.ofDegrees(15);
    private static final Duration LONG = Duration.ofHours(2);
    // First offsets reach 15 degrees; twice that nobody sets up.
    private static final Angle FAR_FROM_POLE = Angle.ofDegrees(30);
    // Civil dusk: with the Sun higher the sky drowns the stars.
    private static final Angle HIGHEST_SUN = Angle.ofDegrees(-6);
    // An explanation fits unless chance is worse once in twenty.
    private static final double FITS = 0.95;
    // Odds of a hundred to one, in units of chi-squared.
    private static final double CLEARLY_BETTER = 2 * Math.log(100);

    private FrameChecks() {}

    /** All findings, the gravest first. */
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

    private static void addClockOrSite(List<FrameFinding> findings, AxisFromFrames axis) {
        for (int i = 0; i < axis.frames().size(); i++) {
            CameraAttitude frame = axis.frames().get(i);
            ObservingMoment moment = ObservingMoment.of(axis.site(), SkyTime.of(frame.at()), Weather.AIRLESS);
            Angle sun = SunGuard.at(moment).sun().altitude();
            if (sun.compareTo(HIGHEST_SUN) > 0) {
                findings.add(new FrameFinding.SunTooHigh(i + 1, sun));
            }
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
        for (FoundDrive.Pair pair : FoundDrive.pairs(axis)) {
            if (pair.drive().isEmpty()) {
                findings.add(
                        new FrameFinding.NeitherTracksNorStands(pair.after(), pair.turnedWest(), pair.skyTurned()));
            }
        }
        FoundDrive found = FoundDrive.of(axis, told);
        if (found.seen() && told != Drive.NOT_TOLD && told != found.drive()) {
            findings.add(new FrameFinding.DriveNotAsTold(told, found.drive()));
        }
    }

    private static void addRigidity(List<FrameFinding> findings, AxisFromFrames axis) {
        if (axis.degreesOfFreedom() == 0) {
            findings.add(new FrameFinding.Unchecked());
        } else if (!axis.closes()) {
            findings.add(slip(axis).orElseGet(() -> notRigid(axis)));
        }
    }

    /** A single move of the camera or of declination between two frames, if just one kind of it explains everything. */
    private static Optional<FrameFinding> slip(AxisFromFrames axis) {
        record Told(AxisFit.Step step, AxisFit fit) {}
        List<Told> ways = new ArrayList<>();
        for (int from = 1; from < axis.frames().size(); from++) {
            for (boolean towardBoresight : new boolean[] {true, false}) {
                AxisFit.Step step = new AxisFit.Step(from, towardBoresight);
                ways.add(new Told(step, AxisFit.of(axis.frames(), axis.axis().elevatedEnd(), Optional.of(step))));
            }
        }
        ways.sort(Comparator.comparingDouble(w -> w.fit().chiSquared()));
        Told best = ways.get(0);
        boolean fits = new ChiSquaredDistribution(axis.degreesOfFreedom() - 1)
                        .cumulativeProbability(best.fit().chiSquared())
                < FITS;
        boolean alone = ways.get(1).fit().chiSquared() - best.fit().chiSquared() > CLEARLY_BETTER;
        if (!fits || !alone) {
            return Optional.empty();
        }
        Angle by = Angle.ofArcseconds(best.fit().stepArcsec());
        return Optional.of(
                best.step().towardBoresight()
                        // The axis came nearer to the boresight in the picture: the boresight nearer to the axis.
                        ? new FrameFinding.DeclinationMoved(best.step().from(), by.negated())
                        : new FrameFinding.CameraSlipped(best.step().from(), by.abs()));
    }

    private static FrameFinding notRigid(AxisFromFrames axis) {
        List<Vector2D> residuals = axis.fit().residuals();
        int worst = 0;
        for (int i = 1; i < residuals.size(); i++) {
            worst = residuals.get(i).getNorm() > residuals.get(worst).getNorm() ? i : worst;
        }
        return new FrameFinding.NotRigid(
                Angle.ofArcseconds(residuals.get(worst).getNorm()), worst + 1, Math.sqrt(axis.widenedBy()));
    }
}
