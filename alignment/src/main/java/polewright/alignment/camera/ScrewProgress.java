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
 * How far the screws have taken the axis since it was found, from one more frame.
 *
 * <p>The axis keeps its place b in the picture whatever the screws do, so it now points along C b, even if right
 * ascension was turned. Near the pole that is all there is to it. Far from the axis the roll of the frame moves C b by
 * σ_r sin p; there it helps that the screws turn about the vertical and the wedge's hinge only, and right ascension as
 * the drive does. That one more figure takes the place of the roll, unless the field stands on the prime vertical (due
 * east, due west or overhead): there a turn in azimuth only rolls the picture, and roll is all that tells of it.
 *
 * <p>When the third turn disagrees with the drive, it is left out and the finding says so.
 *
 * @param now where the axis points now
 * @param azimuthMoved how far the azimuth screw took it, azimuth growing positive
 * @param altitudeMoved how far the altitude screw raised it
 * @param findings what looks wrong
 */
public record ScrewProgress(AxisEstimate now, Angle azimuthMoved, Angle altitudeMoved, List<FrameFinding> findings) {
    // A worm's periodic error and a drive's rate (common practice: tens of arcseconds).
    private static final double TRACKING_SIGMA_ARCSEC = 25;
    // A stopped worm holds still but for the fork's give when a hand is on the wedge.
    private static final double STANDING_SIGMA_ARCSEC = 5;
    private static final double SLIPPED_CHI_SQUARED = 16;
    /** Most wedges end within some degrees (common practice). */
    public static final Angle FARTHEST = Angle.ofDegrees(10);
    /** Later than this after the frames that gave the axis, nobody vouches that the camera has stayed as it was. */
    public static final Duration LONGEST = Duration.ofHours(2);

    /**
     * The axis now.
     *
     * @param found the axis as it was before the screws were turned, from its own frames
     * @param now a frame taken since, declination and camera untouched
     * @param drive what the drive did since the last of those frames
     * @param levelSigma how level the base is trusted to be: a leaning base adds a turn about the axis
     * @throws InputRefused when it was not taken after those frames, or more than {@link #LONGEST} after
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
        // What is missing, right-handed about the elevated end: there westward is negative in the north.
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
     * How far the mount should have turned about its axis since, minus how far the frames say it did.
     *
     * @param missingArcsec right-handed about the elevated end
     */
    record DriveFigure(double missingArcsec, double sigmaArcsec) {}
}
