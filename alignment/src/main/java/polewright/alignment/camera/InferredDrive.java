package polewright.alignment.camera;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * The state of the drive inferred from two consecutive frames at the same position in right ascension.
 *
 * @param drive its state
 * @param seen whether the frames show it; otherwise it is the stated one
 */
public record InferredDrive(Drive drive, boolean seen) {
    // A turn by hand is larger than this (common practice: 30 degrees and up).
    private static final Angle SAME_PLACE = Angle.ofDegrees(1);
    // Over a longer time a turn by hand may match a rate by chance.
    private static final Duration NEAR_IN_TIME = Duration.ofMinutes(20);
    // Lunar and solar rates, and a badly regulated drive, are within this fraction of the sidereal rate.
    private static final double NEAR_A_RATE = 0.2;
    private static final double SIGMAS = 5;

    /** What a pair of frames shows of the drive, if anything. */
    record Pair(int after, Angle turnedWest, Angle skyTurned, Optional<Drive> drive) {}

    /**
     * The drive's state from the frames, or the stated one.
     *
     * @param told from the stars' trails, or from the user
     */
    public static InferredDrive of(AxisFromFrames axis, Drive told) {
        List<Drive> seen =
                pairs(axis).stream().flatMap(p -> p.drive().stream()).distinct().toList();
        return seen.size() == 1 ? new InferredDrive(seen.get(0), true) : new InferredDrive(told, false);
    }

    /** Consecutive frames for which a stationary and a tracking mount differ by more than the frames' uncertainty. */
    static List<Pair> pairs(AxisFromFrames axis) {
        List<Pair> pairs = new ArrayList<>();
        for (int i = 1; i < axis.frames().size(); i++) {
            CameraAttitude from = axis.frames().get(i - 1);
            CameraAttitude to = axis.frames().get(i);
            Angle turned = axis.turnWest(from, to);
            Duration gap = Duration.between(from.at(), to.at());
            Angle sky = SiderealTurn.during(gap);
            boolean samePlace = turned.abs().compareTo(SAME_PLACE) < 0
                    || turned.minus(sky).abs().compareTo(SAME_PLACE) < 0;
            double sigma = Math.sqrt(from.covariance().varianceAboutArcsec2(axis.inCamera())
                    + to.covariance().varianceAboutArcsec2(axis.inCamera()));
            if (samePlace && gap.compareTo(NEAR_IN_TIME) < 0 && NEAR_A_RATE * sky.arcseconds() > SIGMAS * sigma) {
                pairs.add(new Pair(i, turned, sky, drive(turned.radians() / sky.radians())));
            }
        }
        return pairs;
    }

    private static Optional<Drive> drive(double shareOfTheSky) {
        if (Math.abs(shareOfTheSky) < NEAR_A_RATE) {
            return Optional.of(Drive.STANDING);
        }
        return Math.abs(shareOfTheSky - 1) < NEAR_A_RATE ? Optional.of(Drive.TRACKING) : Optional.empty();
    }
}
