package polewright.alignment.camera;

import java.time.Duration;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.geometry.euclidean.threed.Vector3D;
import polewright.mount.AxisEstimate;
import polewright.mount.AxisOffset;
import polewright.mount.AxisPointing;
import polewright.mount.OffsetCovariance;
import polewright.sky.InputRefused;
import polewright.sky.PlainNumber;
import polewright.sky.angle.Angle;
import polewright.sky.attitude.CameraAttitude;
import polewright.sky.attitude.RotationCovariance;
import polewright.sky.place.Site;

/**
 * The axis from two or more frames between which only right ascension was turned.
 *
 * <p>With errors σ_c of the picture's centre and σ_r of its roll, a distance p from the axis to the boresight and a
 * turn θ between two frames, the uncertainty of the axis is σ_c / (√2 sin ½θ) perpendicular to the line from it to the
 * middle of the two fields, and √(σ_c² cos²p + σ_r² sin²p) / (√2 sin ½θ) along it (derived from exact rotations;
 * compared with Monte Carlo in the tests).
 *
 * <p>Frames are kept in order of exposure and are identified by their number in it, counted from 1.
 */
public final class AxisFromFrames {
    /** More frames than are ever taken for one axis. */
    public static final int MOST_FRAMES = 50;
    /** A smaller turn cannot determine an axis. */
    public static final Angle LEAST_TURN = Angle.ofDegrees(1);

    /** Frames farther apart than this belong to different nights. */
    public static final Duration ONE_NIGHT = Duration.ofHours(8);

    private static final double BY_CHANCE = 0.01;

    private final Site site;
    private final List<CameraAttitude> frames;
    private final AxisFit fit;
    private final Optional<FrameExplanations> explanations;

    private AxisFromFrames(Site site, List<CameraAttitude> frames, AxisFit fit) {
        this.site = site;
        this.frames = frames;
        this.fit = fit;
        this.explanations = closes() ? Optional.empty() : Optional.of(FrameExplanations.of(site, frames, fit));
    }

    /**
     * Fits the axis.
     *
     * @param attitudes two at least, each at its own time, in any order
     * @throws InputRefused if the axis cannot be determined: one frame, no turn between them, two nights
     */
    public static AxisFromFrames of(Site site, List<CameraAttitude> attitudes) {
        List<CameraAttitude> frames = inOrderOfExposure(attitudes);
        return new AxisFromFrames(site, frames, AxisFit.of(frames, start(site, frames)));
    }

    public Site site() {
        return site;
    }

    /** In order of exposure. */
    public List<CameraAttitude> frames() {
        return frames;
    }

    /** The axis after the last frame; if the frames do not close, the mean of all possibilities. */
    public AxisPointing axis() {
        return new AxisPointing(mixture().axis());
    }

    /** The elevated end of the axis in camera axes. */
    public Vector3D inCamera() {
        return mixture().inCamera();
    }

    /** Possible explanations if the frames do not close; empty if they do. */
    public Optional<FrameExplanations> explanations() {
        return explanations;
    }

    /** The axis and its direction in camera axes, with their joint covariance. */
    FrameExplanations.Mixture mixture() {
        return explanations
                .map(FrameExplanations::mixture)
                .orElseGet(() -> new FrameExplanations.Mixture(fit.axis(), fit.inCamera(), fit.covariance()));
    }

    /** By frame: the distance from the axis as seen in its own picture to the axis from all frames. */
    public List<Angle> residuals() {
        return fit.residuals().stream()
                .map(r -> Angle.ofArcseconds(r.getNorm()))
                .toList();
    }

    /** Of the residuals, in units of the frames' own covariances. */
    public double chiSquared() {
        return fit.chiSquared();
    }

    /** Degrees of freedom: none with two frames, two more with each further frame. */
    public int degreesOfFreedom() {
        return degreesOfFreedom(frames);
    }

    /** Whether the frames are consistent with a turn in right ascension only, at the 1 % level. */
    public boolean closes() {
        return closes(fit.chiSquared(), degreesOfFreedom());
    }

    /** Reduced chi-squared of the frames: about 1 if nothing moved. */
    public double reducedChiSquared() {
        return degreesOfFreedom() == 0 ? 1 : fit.chiSquared() / degreesOfFreedom();
    }

    /**
     * The axis with its uncertainty. If the frames do not close, the uncertainty covers every position at which a
     * likely disturbance would leave the axis ({@link FrameExplanations}).
     */
    public AxisEstimate estimate() {
        return AxisEstimate.of(mixture().axis(), mixture().covariance().getSubMatrix(0, 1, 0, 1));
    }

    /**
     * The axis from one more frame, taken after the screws were turned with declination and camera untouched: the axis
     * keeps its place in the picture.
     *
     * @param now already checked by {@link AttitudeBounds}
     */
    public AxisEstimate followedTo(CameraAttitude now) {
        return FollowedAxis.of(this, now, now.cameraToEnu().applyTo(inCamera()), Optional.empty())
                .estimate();
    }

    public AxisOffset offset() {
        return axis().offset(site);
    }

    /** Covariance of {@link #offset}. */
    public OffsetCovariance covariance() {
        return estimate().offsetCovariance(site);
    }

    /** The 1 sigma uncertainty of the axis's movement between two such frames: their common errors cancel. */
    public Angle movementSigma(CameraAttitude frame) {
        RotationCovariance covariance = frame.covariance();
        double roll =
                covariance.rollSigma().radians() * boresightPolarDistance().sin();
        return new Angle(Math.sqrt(2) * Math.hypot(covariance.centreSigma().radians(), roll));
    }

    /** From the elevated end of the axis to the centre of the picture. */
    public Angle boresightPolarDistance() {
        return new Angle(Vector3D.angle(inCamera(), Vector3D.PLUS_K));
    }

    /** The rotation of the mount at each frame relative to the first, westward, −180° to 180°. */
    public List<Angle> turnsWest() {
        return frames.stream().map(f -> turnWest(frames.get(0), f)).toList();
    }

    /** The rotation of the mount from each frame to the next, westward, −180° to 180°; one fewer than frames. */
    public List<Angle> turnsBetween() {
        return IntStream.range(1, frames.size())
                .mapToObj(i -> turnWest(frames.get(i - 1), frames.get(i)))
                .toList();
    }

    /** The rotation of the mount from one frame to another, westward. */
    Angle turnWest(CameraAttitude from, CameraAttitude to) {
        return SiderealTurn.westward(to.cameraToEnu().applyTo(from.cameraToEnu().revert()), axis().northernEnd(site));
    }

    /** The largest rotation between any two frames, on which the accuracy of the fit depends. */
    public Angle largestTurn() {
        return largestTurn(frames).turn();
    }

    /** The largest rotation between any two of some frames, 0 to 180°. */
    public static Angle largestTurnOf(List<CameraAttitude> frames) {
        return largestTurn(frames).turn();
    }

    /**
     * The frames by time.
     *
     * @throws InputRefused if no axis can be determined from them at any site
     */
    public static List<CameraAttitude> inOrderOfExposure(List<CameraAttitude> attitudes) {
        if (attitudes.size() < 2) {
            throw new InputRefused(
                    attitudes.isEmpty() ? "there is no frame" : "one frame alone does not give the axis",
                    "turn right ascension by 30 to 90 degrees, nothing else, and take another");
        }
        if (attitudes.size() > MOST_FRAMES) {
            throw new InputRefused(
                    attitudes.size() + " frames are more than " + MOST_FRAMES, "use three or four, far apart");
        }
        attitudes.forEach(AttitudeBounds::require);
        List<CameraAttitude> frames = new ArrayList<>(attitudes);
        frames.sort(Comparator.comparing(CameraAttitude::at));
        for (int i = 1; i < frames.size(); i++) {
            Duration gap =
                    Duration.between(frames.get(i - 1).at(), frames.get(i).at());
            if (gap.isZero()) {
                throw new InputRefused(
                        "two frames have the same time, " + frames.get(i).at().truncatedTo(ChronoUnit.SECONDS),
                        "give each frame its own time of exposure");
            }
            if (gap.compareTo(ONE_NIGHT) > 0) {
                throw new InputRefused(
                        "two frames are " + PlainNumber.of(Math.rint(gap.toMinutes() / 6.0) / 10) + " hours apart ("
                                + frames.get(i - 1).at().truncatedTo(ChronoUnit.SECONDS) + " and "
                                + frames.get(i).at().truncatedTo(ChronoUnit.SECONDS) + ")",
                        "give frames of one night, with only right ascension turned between them");
            }
        }
        Angle turn = largestTurn(frames).turn();
        if (turn.compareTo(LEAST_TURN) < 0) {
            throw new InputRefused(
                    "there is no rotation between the frames (" + PlainNumber.of(Math.rint(turn.degrees() * 100) / 100)
                            + " degrees)",
                    "turn right ascension by 30 to 90 degrees between them");
        }
        return List.copyOf(frames);
    }

    /** The axis of the largest rotation, its end toward the elevated pole. */
    private static Vector3D start(Site site, List<CameraAttitude> frames) {
        Vector3D about = largestTurn(frames).about();
        // At a low latitude the elevated end may lie below the horizon, so the pole decides, not the altitude.
        return about.dotProduct(AxisPointing.atPole(site).elevatedEnd()) >= 0 ? about : about.negate();
    }

    private record Turn(Vector3D about, Angle turn) {}

    private static Turn largestTurn(List<CameraAttitude> frames) {
        Vector3D largest = Vector3D.ZERO;
        for (CameraAttitude later : frames) {
            for (CameraAttitude earlier : frames) {
                if (earlier.at().isBefore(later.at())) {
                    Vector3D turned = later.turnedSince(earlier);
                    largest = turned.getNormSq() > largest.getNormSq() ? turned : largest;
                }
            }
        }
        double angle = largest.getNorm();
        return new Turn(angle == 0 ? Vector3D.PLUS_K : largest.scalarMultiply(1 / angle), new Angle(angle));
    }

    private static int degreesOfFreedom(List<CameraAttitude> frames) {
        return 2 * frames.size() - 4;
    }

    static boolean closes(double chiSquared, int degreesOfFreedom) {
        return degreesOfFreedom == 0
                || new ChiSquaredDistribution(degreesOfFreedom).cumulativeProbability(chiSquared) <= 1 - BY_CHANCE;
    }

    AxisFit fit() {
        return fit;
    }
}
