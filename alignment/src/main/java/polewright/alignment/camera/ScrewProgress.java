package polewright.alignment.camera;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisPointing;
import polewright.sky.InputRefused;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * How far the screws have moved the axis since it was found, from one more frame.
 *
 * <p>The axis keeps its direction b in camera axes whatever the screws do, so it now points along C b, even if right
 * ascension was turned. Near the pole nothing more is needed. Far from the axis the roll of the frame moves C b by σ_r
 * sin p. There it helps that the screws rotate only about the vertical and the wedge's hinge, and right ascension only
 * as the drive does. That constraint replaces the roll, unless the field is on the prime vertical (due east, due west
 * or overhead): there a turn in azimuth only rolls the picture, and roll is the only measurement of it.
 *
 * <p>If the rotation about the axis disagrees with the drive, the constraint is dropped and a finding says so.
 *
 * @param now the axis now
 * @param azimuthMoved movement by the azimuth screw, increasing azimuth positive
 * @param altitudeMoved movement by the altitude screw, upward positive
 * @param findings what looks wrong
 */
public record ScrewProgress(AxisEstimate now, Angle azimuthMoved, Angle altitudeMoved, List<FrameFinding> findings) {
    // Periodic error and rate error of a drive (common practice: tens of arcseconds).
    private static final double TRACKING_SIGMA_ARCSEC = 25;
    // A stopped worm holds still except for flexure of the fork when a hand is on the wedge.
    private static final double STANDING_SIGMA_ARCSEC = 5;
    private static final double SLIPPED_CHI_SQUARED = 16;
    /** Most wedges have a range of some degrees (common practice). */
    public static final Angle FARTHEST = Angle.ofDegrees(10);
    /** Later than this after the frames that gave the axis, the camera cannot be relied on to have stayed in place. */
    public static final Duration LONGEST = Duration.ofHours(2);

    /**
     * The axis now.
     *
     * @param found the axis before the screws were turned, from its own frames
     * @param now a frame taken since, declination and camera untouched
     * @param drive state of the drive since the last of those frames
     * @param levelSigma 1 sigma of the base's level: a tilted base adds a rotation about the axis
     * @throws InputRefused if it was not taken after those frames, or more than {@link #LONGEST} after
     */
    public static ScrewProgress of(AxisFromFrames found, CameraAttitude now, Drive drive, Angle levelSigma) {
        AttitudeBounds.require(now);
        CameraAttitude last = found.frames().get(found.frames().size() - 1);
        Duration since = Duration.between(last.at(), now.at());
        if (since.isZero()) {
            throw new InputRefused(
                    "the frame has the same time as the last of those that gave the axis",
                    "give each frame its own time of exposure");
        }
        if (since.isNegative() || since.compareTo(LONGEST) > 0) {
            throw new InputRefused(
                    "the frame was taken " + since.abs().toMinutes() + " minutes "
                            + (since.isNegative() ? "before" : "after") + " those that gave the axis",
                    "find the axis again: two frames with right ascension turned between them");
        }
        ScrewMove move = ScrewMove.between(found, found.axis(), last, now);
        double beyondWest = move.beyondDriveArcsec(drive, since);
        double lean = move.leanArcsec(levelSigma);
        double driveSigma = drive == Drive.STANDING ? STANDING_SIGMA_ARCSEC : TRACKING_SIGMA_ARCSEC;
        // The missing rotation, right-handed about the elevated end: westward is negative there in the north.
        DriveFigure figure = new DriveFigure(found.site().hemisphereSign() * beyondWest, Math.hypot(driveSigma, lean));
        FollowedAxis followed = FollowedAxis.of(found, now, move.now().elevatedEnd(), Optional.of(figure));
        boolean slipped = followed.addedChiSquared() > SLIPPED_CHI_SQUARED;
        if (slipped) {
            followed = FollowedAxis.of(found, now, move.now().elevatedEnd(), Optional.empty());
        }
        List<FrameFinding> findings = new ArrayList<>();
        if (slipped) {
            findings.add(new FrameFinding.RightAscensionTurned(Angle.ofArcseconds(beyondWest)));
        }
        AxisPointing axis = followed.estimate().axis();
        Angle distance = axis.separation(found.axis());
        if (distance.compareTo(FARTHEST) > 0) {
            findings.add(new FrameFinding.MovedTooFar(distance));
        }
        return new ScrewProgress(
                followed.estimate(),
                axis.azimuth().minus(found.axis().azimuth()).wrappedSigned(),
                axis.altitude().minus(found.axis().altitude()),
                List.copyOf(findings));
    }

    /**
     * Expected minus measured rotation of the mount about its axis since then.
     *
     * @param missingArcsec right-handed about the elevated end
     */
    record DriveFigure(double missingArcsec, double sigmaArcsec) {}
}
