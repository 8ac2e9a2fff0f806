package polewright.alignment.camera;

import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;

/**
 * What the drive did, as far as the frames tell: two frames in a row at the same place in right ascension do.
 *
 * @param drive what it did
 * @param seen whether the frames tell; else it is taken as told
 */
public record InferredDrive(Drive drive, boolean seen) {
    // A turn by hand is more than this (common practice: 30 degrees and up).
    private static final Angle SAME_PLACE = Angle.ofDegrees(1);
    // Over a longer time a turn by hand may come out the same by chance.
    private static final Duration NEAR_IN_TIME = Duration.ofMinutes(20);
    // Rates of the Moon and the Sun, and a drive out of tune, are nearer to the stars' than this.
    private static final double NEAR_A_RATE = 0.2;
    private static final double SIGMAS = 5;

    /** What a pair of frames shows, if anything. */
    record Pair(int after, Angle turnedWest, Angle skyTurned, Optional<Drive> drive) {}

    /**
     * What is seen of the drive, or what was told of it.
     *
     * @param told by the stars' trails, or by the user
     */
    public static InferredDrive of(AxisFromFrames axis, Drive told) {
        List<Drive> seen =
                pairs(axis).stream().flatMap(p -> p.drive().stream()).distinct().toList();
        return seen.size() == 1 ? new InferredDrive(seen.get(0), true) : new InferredDrive(told, false);
    }

    /** Frames in a row between which a standing and a tracking mount differ by more than the frames' uncertainty. */
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
